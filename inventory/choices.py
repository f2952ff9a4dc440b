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


class ClothPart(models.TextChoices):
    """The cloths one garment may be made of, each with fibres and advice of its own."""

    SHELL = "shell", "Shell"
    LINING = "lining", "Lining"
    TRIM = "trim", "Trim"


class LabelEdition(models.IntegerChoices):
    """The edition of ISO 3758 a label was printed by; the limits of the iron differ."""

    OLD = 2012, "2012"
    NEW = 2023, "2023"


class WashWay(models.TextChoices):
    """How a garment was washed; the values are those of the advice."""

    HAND = "hand", "By hand"
    VERY_MILD = "machine-very-mild", "Machine, very mild"
    MILD = "machine-mild", "Machine, mild"
    MACHINE = "machine", "Machine"
    PROFESSIONAL = "professional", "By a professional cleaner"


class Recommendation(models.TextChoices):
    """The recommendations a maker may put her own words beside.

    Shrinkage is not among them: it is measured, by a wash, and never argued away.
    """

    WASH = "wash", "Washing"
    DRY = "dry", "Drying"
    PRESS = "press", "Pressing"
    INTERFACING = "interfacing", "Interfacing"
    MARKING = "marking", "Marking"
    CUTTING = "cutting", "Cutting"
    HOLDING = "holding", "Holding"
    NEEDLE = "needle", "Needle"
    THREAD = "thread", "Thread"
    STITCH = "stitch", "Stitch"
    EDGE = "edge", "Edges"


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
