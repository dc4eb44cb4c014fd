"""How the things that stand around an analyte in its printed name are written."""

import re

WORD = re.compile(r"°?[^\W_]+(?:'(?=[-,\s]|$))?|[%#°+]")
MARKS = re.compile(
    r"\^\(?(?:\d+|[a-z](?:,[a-z])*)\)?(?![\w])|\{[A-Za-z0-9,]{1,4}\}|[*†‡§¹²³]+|(?<=\w)\s*\[\d{1,2}\]$|\(\d\)$"
)
CHARGE = re.compile(r"(?<=[A-Za-z0-9])(?:\^\d?[+-]+\d?|\(\d?[+-]\d?\)|--+|\+\+|=)")
METHOD = re.compile(
    r"[\s,;(]*(?:\bby\s+|\bper\s+|\busing\s+|\bmethod\s+)*\b(?:US)?"
    r"(EPA|SM|ASTM|APHA|DIN EN ISO|DIN ISO|DIN EN|DIN|NF EN ISO|NF EN|NF T|EN ISO|ISO|EN|USGS|HACH|Method"
    r"|Std\.? ?Methods?)[\s:#.-]*(?:method\s*)?"
    r"([A-Z]?\s?-?\d[\w.:-]*(?:\s?[A-H](?:,[A-H])?\b)?(?:-NO3 ?\w|-[A-Z]{1,3}\d?\s?[A-H]?\b)?)\)?",
    re.IGNORECASE,
)
TEMPERATURE = re.compile(
    r"^[\s,;(@]*(?:(?:@|at|bei|a|to|zu)\s*(\d{1,3}(?:[.,]\d)?)|(\d{1,3}(?:[.,]\d)?)(?=\s*(?:°|deg|c)))"
    r"\s*(?:°|deg(?:rees)?\.?)?\s*c?(?:elsius)?\)?$|^[\s,;(@]*(?:at|to|bei|a|zu)?\s*ph\s*\d{1,2}(?:\.\d)?(?:-\d(?:\.\d)?)?\)?$"
)
LEADER = re.compile(r"\.{2,}|^\(?\d{1,2}[.)]\s+(?=[^\W\d])")  # dots to the value, a number in a list
FILTER = re.compile(r"^\d*\.?\d+[\s-]*(?:micron|µm|um)s?\b(?: (?:glass fiber|membrane|capsule))?(?: filters?)?$")
EMISSION_LINE = re.compile(r"^([A-Z][a-z]?) (\d{3}\.\d{3})(?:\s?-\s?[AR])?$")
LIMIT = re.compile(
    r"\s*[(\[]([^\W\d][^\d()\[\]<]*?)\s*[:=]?\s*(<?\s*\d[^()\[\]]*)[)\]]"
)  # "(RL 0.05)", "[MCL = 10 mg/L]"
# A limit without its word: "(10)", "(<0.3 mg/L)".
BARE_LIMIT = re.compile(r"\s*[(\[]\s*([<≤]?)\s*(\d+(?:[.,]\d+)?)\s*([^()\[\]\d][^()\[\]]*)?[)\]]")
# How long water stood or ran: "5 min flush", "after 6 hours".
DURATION = re.compile(
    r"^\d+[\s-]*(?:s|secs?|seconds?|min|mins|minutes?|h|hrs?|hours?|stunden?|heures?|minutos?|horas?)$"
)
