"""The published sources the advice room leans on, each named once.

A source stands here only when its text, or an official restatement of it, was read.
Everything else is marked as a trade figure, common practice or memory in ``facts.py``.
"""

AGREED_ALLOWANCES = "French decree of 24 June 1998 (ECOC9800073A), annex II"
EU_FIBRE_NAMES = "Directive 2008/121/EC, annex I (names kept by Regulation (EU) 1007/2011)"
FTC_OLEFIN = "68 Federal Register 3813, 27 January 2003"
FTC_ELASTERELL = "67 Federal Register 70835, 27 November 2002"

CARE_SYMBOLS_2012 = "GINETEX, Table of textile care symbols (ISO 3758:2012)"
CARE_SYMBOLS_2023 = (
    "BOKEN quality institute, 28 May 2024, and a note citing the Cabinet Office consumer "
    "committee, 13 May 2024, on JIS L 0001:2024 (aligned with ISO 3758:2023)"
)
CARE_CHANGES_2023 = "notice of the changes in ISO 3758:2023 (test house, 2024)"
FTC_CARE_CARD = "US Federal Trade Commission, care card"

SHRINK_METHOD = "AATCC 135-2018t, excerpt"
SHRINK_KINDS = "trade association note on dimensional change"

INTERFACINGS = "Washington State University Extension EM014, Interfacings"
SEWING_TEXTBOOK = "Apparel: Design, Textiles and Construction (school textbook, 2012)"
FUSING_FACTS = "American Sewing Guild, fusing facts"
NEEDLE_NUMBERS = "apparel-science note on needle numbers"
NEEDLE_ENTRY = "textile encyclopaedia entry on needles, 2013"
SEAM_FINISHES = "University of Kentucky Cooperative Extension FCS2-304, Seams and Seam Finishes"

CCI_COLOUR_TEST = "Canadian Conservation Institute, Notes 13/14, Testing for colourfastness"
CCI_WASHING = "Canadian Conservation Institute, Note on washing non-coloured textiles"
WEIGHTED_SILK = "M. T. Horswill, PhD thesis, University of Wisconsin-Madison, 1993"
CAMEO = "CAMEO materials database, Museum of Fine Arts, Boston"
NPS_PLASTICS = "US National Park Service, Conserve O Gram 16/4, 2002"
NPS_MOULD_1993 = "US National Park Service, Conserve O Gram 3/4, 1993"
NPS_MOULD_2007 = "US National Park Service, Conserve O Gram 3/4, 2007"
NPS_DISASTER = "US National Park Service, disaster primer"
TEXTILE_MUSEUM_PESTS = "The Textile Museum (Washington), pest brochure"
GREY_SCALE = "EN 20105-A02:1994 (ISO 105-A02), preview"

HSE_BLOOD = "Health and Safety Executive, fabrics soiled with blood"
NHS_WASHING = "NHS Greater Glasgow and Clyde, Washing clothes at home, 2012"
CDC_MOULD = "US CDC, what to wear before entering a mouldy building"
EPA_MOULD = "US EPA, mould guide"
EPA_MOTHBALLS = "US EPA, mothballs text"
MOTHBALL_REVIEW = "Santucci and Shah, Academic Emergency Medicine 2000;7(1):42-7"
AIHA_VAPOUR = "AIHA, protective equipment after natural disasters"
