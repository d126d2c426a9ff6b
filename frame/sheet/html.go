package sheet

import (
	"encoding/xml"
	"strings"
)

// html collects a page. What it writes is HTML that also reads as XML.
type html struct {
	strings.Builder
	tables int
}

func (h *html) raw(s string) { h.WriteString(s) }

func (h *html) element(name, attrs, text string) {
	h.raw("<" + name + attrs + ">" + escape(text) + "</" + name + ">\n")
}

// escape returns a text on one line, fit for content and quoted attributes.
func escape(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(clean(s))) // a Builder returns no error
	return b.String()
}

// looks is the whole style of the page. A side is as wide in print as the
// layout reckons with, whatever the paper.
const looks = `:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0;color:#000;background:#fff;font:12pt/1.3 Arial,Helvetica,sans-serif;overflow-wrap:anywhere;-webkit-text-size-adjust:100%;text-size-adjust:100%}
main,.front{max-width:188mm;margin:0 auto;padding:0 4mm}
h1{font-size:20pt;line-height:1.2;margin:4mm 0 2mm}
h2{font-size:18pt;line-height:1.2;margin:0 0 3mm}
h3{font-size:1.15em;line-height:1.3;margin:3mm 0 2mm}
p{margin:0 0 3mm}
a{color:inherit}
nav ul{margin:0 0 4mm;padding-left:6mm}
nav li{padding:1.5mm 0}
.sheet{padding:5mm 0;border-top:0.6mm solid #000}
.dock{margin:0 0 1mm}
.sheet footer{margin-top:4mm;padding-top:1mm;border-top:0.25mm solid #000;font-size:9.5pt;line-height:1.25}
.sheet footer p{margin:0}
figure{margin:0 0 4mm}
figure svg{display:block;width:100%;height:auto}
.stop{border:0.9mm solid #000;padding:1mm 4mm;margin-bottom:2mm;font-weight:bold}
.sign{margin:0 0 4mm;text-align:center;font-size:30pt;line-height:1.2;font-weight:bold}
.stop strong{border:0.5mm solid #000;padding:0 1.5mm;margin-right:1mm}
ul,ol{margin:0 0 1.5mm;padding-left:12mm}
li{padding:0 0 1.4mm}
ul.boxes{list-style:none;padding-left:9mm}
ul.boxes li{text-indent:-7mm}
.tick{display:inline-block;width:4.4mm;height:4.4mm;border:0.4mm solid #000;vertical-align:-0.7mm;margin-right:1.5mm}
.blanks{margin:0 0 3mm}
.fill{display:flex;align-items:flex-end;gap:2mm;min-height:11mm;margin:0}
.line{flex:1;display:block;min-width:24mm;height:8mm;border-bottom:0.35mm solid #000}
.scroll{overflow-x:auto;margin-bottom:1mm}
table{width:100%;table-layout:fixed;border-collapse:collapse;border-bottom:0.35mm solid #000}
caption{text-align:left;font-weight:bold;padding-bottom:1.5mm}
th,td{text-align:left;vertical-align:top;padding:0.9mm 1.8mm;border-top:0.2mm solid #000}
thead th{border-top:0.5mm solid #000;border-bottom:0.5mm solid #000;vertical-align:bottom}
td .tick{margin:0}
th.ticks{font-size:9.5pt;padding-left:0;padding-right:0}
td .line{min-width:0}
.note+:not(.note){margin-top:3mm}
.note{margin:0;font-size:10.45pt;line-height:1.25}
.code{font-weight:bold;text-decoration:none}
@page{margin:12mm 15mm}
@media screen and (max-width:700px){table{font-size:11pt;table-layout:auto}th,td{overflow-wrap:break-word}col{width:auto!important}th,td{padding:0.9mm 1mm}th.ticks{font-size:7.5pt;white-space:nowrap}table.broad{min-width:560px}.sign{font-size:22pt}figure{margin:0 -4mm 4mm}}
@media print{
main{max-width:180mm;padding:0}
.front{display:none}
.sheet{display:flex;flex-direction:column;min-height:252mm;padding:0;border:0;break-after:page;break-inside:avoid}
.sheet:last-child{break-after:auto}
.sheet .body{flex:1}
.scroll{overflow:visible}
}
`

// HTML returns the whole document as one page that needs nothing else: pictures
// inside, no script, no font. It fails where the data make no valid page, and with
// [ErrTall] where a part is taller than a side of paper.
func (d Document) HTML() (string, error) {
	sides, err := d.sides()
	if err != nil {
		return "", err
	}
	h := &html{}
	h.raw("<!DOCTYPE html>\n" + `<html lang="en">` + "\n<head>\n" + `<meta charset="utf-8"/>` + "\n" +
		`<meta name="viewport" content="width=device-width, initial-scale=1"/>` + "\n")
	h.element("title", "", d.Title)
	h.raw("<style>\n" + looks + "</style>\n</head>\n<body>\n" + `<header class="front">` + "\n")
	h.element("h1", "", d.Title)
	for _, s := range d.foot() {
		h.element("p", "", s)
	}
	if len(sides) > 1 {
		h.raw(`<nav aria-label="Pages"><ul>` + "\n")
		for _, s := range sides {
			h.raw(`<li><a href="#` + s.id() + `">` + escape(s.heading()) + "</a></li>\n")
		}
		h.raw("</ul></nav>\n")
	}
	h.raw("</header>\n<main>\n")
	for _, s := range sides {
		d.side(h, s)
	}
	h.raw("</main>\n</body>\n</html>\n")
	return h.String(), nil
}

// side writes one printed side.
func (d Document) side(h *html, s side) {
	id := s.id()
	h.tables = 0
	h.raw(`<section class="sheet" id="` + id + `" aria-labelledby="` + id + `-title">` + "\n<header>\n")
	h.element("p", ` class="dock"`, d.Title)
	h.element("h2", ` id="`+id+`-title"`, s.heading())
	h.raw("</header>\n" + `<div class="body">` + "\n")
	for _, b := range s.blocks {
		b.write(h, id)
	}
	h.raw("</div>\n<footer>\n")
	for _, line := range d.foot() {
		h.element("p", "", line)
	}
	h.raw("</footer>\n</section>\n")
}
