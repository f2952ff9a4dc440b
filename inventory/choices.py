"""The fixed lists a garment is described by, in the words of the bench. Values are stored; labels
are read. Fibres, constructions and care marks have their own lists in ``inventory.advice``."""

from django.db import models

TAG_ALPHABET = "ACDEFHJKLMNPRTUVWXY3479"  # nothing that is misread on a pinned paper tag
TAG_LENGTH = 4


class Consent(models.TextChoices):
    ASK = "ask", "Not asked yet"
    YES = "yes", "Yes"
    NO = "no", "No"


class Kind(models.TextChoices):
    SHIRT = "shirt", "Shirt"
    BLOUSE = "blouse", "Blouse"
    TSHIRT = "t-shirt", "T-shirt"
    SLEEPSUIT = "sleepsuit", "Baby sleepsuit"
    BODYSUIT = "bodysuit", "Baby bodysuit"
    DRESS = "dress", "Dress"
    WEDDING_DRESS = "wedding-dress", "Wedding dress"
    SKIRT = "skirt", "Skirt"
    TROUSERS = "trousers", "Trousers"
    JEANS = "jeans", "Jeans"
    JUMPER = "jumper", "Jumper"
    CARDIGAN = "cardigan", "Cardigan"
    SWEATSHIRT = "sweatshirt", "Sweatshirt or fleece"
    JACKET = "jacket", "Jacket"
    UNIFORM = "uniform", "Uniform"
    COAT = "coat", "Coat"
    NIGHTWEAR = "nightwear", "Pyjamas or nightdress"
    GOWN = "dressing-gown", "Dressing gown"
    TIE = "tie", "Tie"
    SCARF = "scarf", "Scarf"
    BLANKET = "blanket", "Blanket or shawl"
    TOWEL = "towel", "Towel"
    OTHER = "other", "Something else"


class Colour(models.TextChoices):
    WHITE = "white", "White"
    CREAM = "cream", "Cream"
    GREY = "grey", "Grey"
    BLACK = "black", "Black"
    BROWN = "brown", "Brown"
    RED = "red", "Red"
    PINK = "pink", "Pink"
    ORANGE = "orange", "Orange"
    YELLOW = "yellow", "Yellow"
    GREEN = "green", "Green"
    BLUE = "blue", "Blue"
    NAVY = "navy", "Navy"
    PURPLE = "purple", "Purple"
    MANY = "many", "Many colours"


class Surface(models.TextChoices):
    PLAIN = "plain", "Plain"
    STRIPE = "stripe", "Stripe"
    CHECK = "check", "Check"
    PRINT = "print", "Printed or woven pattern"
    RUBBERY = "rubbery-print", "Rubbery print"


class Status(models.TextChoices):
    ARRIVED = "arrived", "Arrived"
    SET_ASIDE = "set-aside", "Set aside"
    WASHED = "washed", "Washed"
    PRESSED = "pressed", "Pressed"
    READY = "ready", "Ready to cut"
    CUT = "cut", "Cut"
    RETURNED = "returned", "Returned"


class Trouble(models.TextChoices):
    MOULD = "mould", "Mould or musty"
    MOTH = "moth", "Moth or insects"
    MOTHBALL = "mothball", "Smells of mothballs"
    BLOOD = "blood", "Blood or body fluids"
    CREAM = "cream", "Soaked with skin cream"
    SMOKE = "smoke", "Smoke"
    ANTIQUE = "antique", "Treasured or antique"
    SHATTERED = "shattered", "Splits or powders when touched"
    BLED = "bled", "Its colour has run already"
    DRY_CLEANED = "dry-cleaned", "Just back from the dry cleaner"


class PanelShape(models.TextChoices):
    RECTANGLE = "rectangle", "Rectangle"
    TRAPEZIUM = "trapezium", "Trapezium"
    SHIRT_BODY = "shirt-body", "Shirt body"
    SLEEVE = "sleeve", "Sleeve"
    TROUSER_LEG = "trouser-leg", "Trouser leg"
    SKIRT_GORE = "skirt-gore", "Skirt gore"
    CORNERS = "corners", "Corner by corner"


class FlawKind(models.TextChoices):
    STAIN = "stain", "Stain"
    HOLE = "hole", "Hole"
    THIN = "thin", "Thin place"
    SEAM = "seam", "Seam"
    DART = "dart", "Dart"


class DetailKind(models.TextChoices):
    POCKET = "pocket", "Pocket"
    MONOGRAM = "monogram", "Monogram or embroidery"
    BADGE = "badge", "Badge or patch"
    BUTTONS = "buttons", "Button row"
    OTHER = "other", "Something else"
