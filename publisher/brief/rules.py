"""What a designer's folder must keep, stated once. ``found`` of a rule makes the finding."""

from publisher.basics import Rule, Severity

_ERROR = Severity.ERROR


def _rule(name: str, title: str, rationale: str) -> Rule:
    return Rule(f"brief/{name}", title, rationale, _ERROR)


NO_FOLDER = _rule("no-folder", "the design folder exists", "a design is a folder with spec.yaml in it")
FOLDER_NAME = _rule(
    "folder-name",
    "the folder's name is small letters, digits and hyphens",
    "the folder's name becomes part of every file name of the pack, on every kind of computer",
)
NOT_NEW = _rule(
    "not-new",
    "a new design takes the place of no file",
    "what somebody wrote would be lost under what every new design begins with",
)
NO_SPEC = _rule("no-spec", "the folder holds spec.yaml", "everything about a design starts from its spec")
UNREADABLE = _rule(
    "unreadable-file", "every file can be read", "a pack cannot be made from a file that nobody can open"
)
SPEC_SIZE = _rule(
    "spec-too-big", "the spec is of reasonable size", "a spec is written by hand; a huge one is a mistake"
)
NOT_UTF8 = _rule("not-utf8", "the spec is UTF-8 text", "only one encoding reads the same on every machine")
HIDDEN = _rule(
    "hidden-character",
    "the spec holds no invisible characters",
    "control and direction characters make a text print otherwise than it reads in an editor",
)
SYNTAX = _rule("yaml-syntax", "the spec is well-formed YAML", "a file that reads two ways would make two packs")
TAB = _rule(
    "tab-indent", "the spec is indented with blanks", "YAML allows no tabs before a key, their width being unknown"
)
UNQUOTED = _rule(
    "unquoted-text",
    "text with braces or colons is written as a block or in quotes",
    "YAML takes an opening brace or a colon with a blank for structure, and the words would be lost",
)
EMPTY = _rule("empty-spec", "the spec holds something", "there is nothing to make from an empty file")
TOP = _rule("not-a-mapping", "the spec is a list of “key: value” lines", "sections are found by their names")
DOCUMENTS = _rule("several-documents", "the spec is one document", "one folder is one design")
DEPTH = _rule(
    "too-deep", "sections are not nested too deep", "no design needs it, and a hostile file could exhaust the tool"
)
NODES = _rule("too-many-values", "the spec holds a bounded number of values", "a hostile file could exhaust the tool")
ALIASES = _rule(
    "too-many-aliases",
    "few YAML aliases are used",
    "aliases multiply what a file holds; every number stands once under “sizes” instead",
)
DUPLICATE = _rule("duplicate-key", "every key stands once", "of two values under one key one would silently be lost")
MERGE = _rule("merge-key", "no “<<” merge keys", "a merge hides where a value comes from")
TAG = _rule(
    "foreign-tag", "no YAML tags but the core ones", "the kind of a value follows from its field, never from a tag"
)
KEY = _rule("bad-key", "every key is one word", "keys are names, used in expressions and texts")
LIKENESS = _rule(
    "likeness",
    "a part is like another part of the design",
    "what it takes over must be written in one place and no circle",
)
UNKNOWN_KEY = _rule("unknown-key", "every key is known", "an unknown key is a typing mistake and would have no effect")
MISSING_KEY = _rule("missing-key", "every needed key is given", "the tool invents no value that changes a size")
UNKNOWN_WORD = _rule("unknown-word", "a choice is one of the known words", "another word would have no effect")
WRONG_KIND = _rule("wrong-kind", "every value is of its field's kind", "a list is no length and a length is no list")
BAD_FORM = _rule("bad-form", "a value has its field's form", "names, versions and sheet sizes are read by their form")
LENGTH = _rule("too-long", "texts are of bounded length", "what does not fit a page cannot be printed")
NO_VALUE = _rule("no-value", "every key has a value", "a key without a value is an unfinished line")
ITEMS = _rule("wrong-number-of-items", "lists hold as many items as they can use", "too few or too many cannot be used")
REPEATED = _rule("repeated-item", "lists of names hold each name once", "the second mention would have no effect")
UNCLEAR = _rule("unclear-choice", "of keys that exclude each other one is given", "two answers to one question")
FORMAT = _rule("unknown-format", "the spec's format is one that this tool reads", "a later format may mean other sizes")
MISFIT = _rule(
    "does-not-fit-the-form", "the spec fits its schema", "what editors accept and what the tool accepts is one"
)
MANY = _rule("more-findings", "a spec has few mistakes", "a list that nobody can read to its end helps nobody")
LEAVES = _rule(
    "path-leaves-folder",
    "files lie inside the design folder",
    "a spec from a stranger reads nothing else of a computer",
)
PATH_FORM = _rule(
    "path-form", "paths are plain and relative", "a path must mean the same file on every kind of computer"
)
FILE_TYPE = _rule(
    "wrong-file-type", "a file has the ending of its kind", "pictures, drawings and fonts are read differently"
)
MISSING_FILE = _rule("missing-file", "every named file exists", "a page cannot show a picture that is not there")
NAME_CASE = _rule(
    "file-name-case",
    "small and capital letters of a path are as on the disk",
    "a name that differs in case is found on some computers and not on others",
)
FILE_SIZE = _rule("file-too-big", "files are of bounded size", "a pack must build in ordinary memory")
NOT_PICTURE = _rule("not-a-picture", "a picture is a JPEG, PNG, WebP or TIFF image", "other content is never opened")
PICTURE_COLOURS = _rule(
    "picture-colours",
    "a picture's numbers have one meaning as colours",
    "numbers without a white print as a white or black field, or as nobody knows what",
)
PIXELS = _rule("too-many-pixels", "a picture's pixel count is bounded", "a small file can unfold to fill all memory")
NOT_FONT = _rule("not-a-font", "a font is a TrueType font with outlines", "only these can be embedded as a subset")
FONT_RIGHTS = _rule(
    "font-rights",
    "a font may be embedded, by what its maker says in it",
    "a pack is given away or sold with the font's letters inside, and its designer answers for that",
)

RULES: tuple[Rule, ...] = (
    NO_FOLDER, FOLDER_NAME, NOT_NEW, NO_SPEC, UNREADABLE, SPEC_SIZE, NOT_UTF8, HIDDEN, SYNTAX, TAB, UNQUOTED, EMPTY, TOP,
    DOCUMENTS, DEPTH, NODES, ALIASES, DUPLICATE, MERGE, TAG, KEY, LIKENESS, UNKNOWN_KEY, MISSING_KEY, UNKNOWN_WORD, WRONG_KIND,
    BAD_FORM, LENGTH, NO_VALUE, ITEMS, REPEATED, UNCLEAR, FORMAT, MISFIT, MANY, LEAVES, PATH_FORM, FILE_TYPE,
    MISSING_FILE, NAME_CASE, FILE_SIZE, NOT_PICTURE, PICTURE_COLOURS, PIXELS, NOT_FONT, FONT_RIGHTS,
)  # fmt: skip
