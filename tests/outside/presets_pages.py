"""Reads made pages with parsers of the standard library and prints what is wrong with them, as JSON by file."""
import html.parser
import json
import sys
import xml.etree.ElementTree as tree

# HTML elements that have no end tag.
VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
# SVG attributes that may carry an address, and schemes that leave the file.
ADDRESSES = {"href", "src", "xlink:href", "action", "data", "poster", "srcset"}


class Page(html.parser.HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.open, self.faults, self.pictures, self.headings, self.ids, self.links = [], [], 0, [], [], []
        self.text = []

    def handle_starttag(self, tag, attributes):
        for name, value in attributes:
            if name in ADDRESSES and value is not None:
                (self.links.append(value[1:]) if value.startswith("#") else self.faults.append(f"{tag} {name}={value}"))
            if value and "url(" in value and "url(#" not in value:
                self.faults.append(f"{tag} {name}={value}")
            if name == "id":
                self.ids.append(value)
        if tag == "svg":
            self.pictures += 1
        if tag == "script":
            self.faults.append("a script")
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag):
        if not self.open or self.open[-1] != tag:
            self.faults.append(f"</{tag}> at line {self.getpos()[0]} closes {self.open[-1:] or 'nothing'}")
        else:
            self.open.pop()

    def handle_data(self, data):
        self.text.append(data)
        if self.open and self.open[-1] == "style" and ("url(" in data or "@import" in data):
            self.faults.append("a style sheet that loads something")
        if self.open and self.open[-1] in ("h1", "h2"):
            self.headings.append(data.strip())


def read_html(text):
    page = Page()
    page.feed(text)
    page.close()
    faults = page.faults + [f"<{tag}> is never closed" for tag in page.open]
    faults += [f"id {i} stands twice" for i in {i for i in page.ids if page.ids.count(i) > 1}]
    faults += [f"link to #{name} leads nowhere" for name in page.links if name not in page.ids]
    return {"faults": faults, "pictures": page.pictures, "headings": page.headings, "text": "".join(page.text)}


def read_svg(text):
    root = tree.fromstring(text)
    faults = [] if root.tag == "{http://www.w3.org/2000/svg}svg" else [f"root is {root.tag}"]
    for element in root.iter():
        for name, value in element.attrib.items():
            if name.split("}")[-1] in ("href", "src") and not value.startswith("#"):
                faults.append(f"{element.tag} {name}={value}")
            if any(word in value for word in ("NaN", "Infinity", "undefined")):
                faults.append(f"{element.tag} {name}={value}")
    return {"faults": faults, "pictures": 1, "headings": [], "text": "".join(root.itertext())}


found = {}
for path in sys.argv[1:]:
    with open(path, encoding="utf-8") as file:
        content = file.read()
    found[path] = read_html(content) if path.endswith(".html") else read_svg(content)
print(json.dumps(found))
