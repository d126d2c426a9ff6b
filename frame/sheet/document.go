package sheet

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Document is a set of cards to print. Every printed side bears the dock's
// name, the plan's fingerprint, the date, the units, the method, and what was
// not checked.
type Document struct {
	Title       string // the dock's name
	Fingerprint string // of the plan
	Date        time.Time
	Units       measure.System
	Method      string   // method and edition
	NotChecked  []string // what the sheets do not answer
	Cards       []Card
}

// A Card is what belongs together on one side of paper. A longer card is carried
// on over further sides, each marked "2 of 3".
type Card struct {
	Name   string // for links and files: "cut-list"
	Title  string
	Blocks []Block
}

// NotSealed stands on every printed side.
const NotSealed = "Not sealed, not a permit drawing."

// Sizes of a printed side in millimetres: what A4 and Letter both hold inside
// their margins, less a little that a printer may lose.
const (
	pageWide = 180.0
	pageHigh = 252.0
	bodySize = 12 * 25.4 / 72 // 12 point
	bodyLine = bodySize * 1.3
	footSize = 9.5 * 25.4 / 72
	footLine = footSize * 1.25
	headSize = 18 * 25.4 / 72
	headLine = headSize * 1.2
)

// narrow is how much narrower the page's own faces run than the widest that pictures
// reckon with: Arial, Helvetica and the free faces made to their widths run 1.2 times
// as narrow; a part is kept in hand.
const narrow = 1.16

// A side is one printed side of a card.
type side struct {
	card   *Card
	n, of  int
	blocks []Block
}

// id returns the side's name in the page.
func (s side) id() string { return "card-" + s.card.Name + "-" + strconv.Itoa(s.n) }

// heading returns the card's title with the number of the side.
func (s side) heading() string {
	if s.of > 1 {
		return fmt.Sprintf("%s (%d of %d)", s.card.Title, s.n, s.of)
	}
	return s.card.Title
}

// check refuses what would make a page invalid.
func (d Document) check() error {
	if strings.TrimSpace(d.Title) == "" {
		return &measure.Error{Field: "Document.Title", Class: measure.ErrUnknown, Want: "the dock's name"}
	}
	if d.Date.IsZero() {
		return &measure.Error{Field: "Document.Date", Class: measure.ErrUnknown, Want: "the day it was made"}
	}
	seen := map[string]bool{}
	once := func(field, name string) error {
		switch {
		case !fileName(name):
			return &measure.Error{Field: field, Text: name, Class: measure.ErrSyntax, Want: "small letters, digits and hyphens"}
		case seen[field+name]:
			return &measure.Error{Field: field, Text: name, Class: measure.ErrName, Why: "it is there twice"}
		}
		seen[field+name] = true
		return nil
	}
	for _, c := range d.Cards {
		if err := once("Card.Name", c.Name); err != nil {
			return err
		}
		for _, b := range c.Blocks {
			if b == nil {
				return &measure.Error{Field: "Card.Blocks of " + c.Name, Class: measure.ErrUnknown, Want: "a block"}
			}
			if p, ok := b.(Picture); ok {
				if err := once("Picture.Name", p.Name); err != nil {
					return err
				}
				if !(p.Width > 0 && p.Height > 0) || p.SVG == "" {
					return &measure.Error{Field: "Picture " + p.Name, Class: measure.ErrUnknown, Want: "a picture that was drawn"}
				}
			}
		}
	}
	return nil
}

// fileName reports whether a name is fit for links and files.
func fileName(s string) bool {
	for _, r := range s {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' {
			return false
		}
	}
	return s != "" && s[0] != '-' && len(s) <= 60
}

// foot returns the lines that stand under every side.
func (d Document) foot() []string {
	units := "feet, inches and pounds"
	if d.Units != measure.US {
		units = "metres and kilograms"
	}
	var parts []string
	if d.Fingerprint != "" {
		parts = append(parts, "Plan "+d.Fingerprint)
	}
	parts = append(parts, d.Date.Format("2 January 2006"), units)
	if d.Method != "" {
		parts = append(parts, d.Method)
	}
	lines := []string{strings.Join(parts, "; ") + "."}
	not := NotSealed
	if len(d.NotChecked) > 0 {
		not += " Not checked: " + strings.Join(d.NotChecked, "; ") + "."
	}
	return append(lines, not)
}

// folded returns how many lines texts take in print.
func folded(size, width float64, isBold bool, texts ...string) float64 {
	n := 0
	for _, t := range texts {
		n += max(1, len(svg.Fold(t, width*narrow, svg.TextStyle{Size: size, Bold: isBold})))
	}
	return float64(n)
}

// room returns the height that a side of a card leaves for its blocks.
func (d Document) room(c *Card) float64 {
	head := bodyLine*folded(bodySize, pageWide, false, d.Title) + headLine*folded(headSize, pageWide, true, c.Title+" (88 of 88)") + 5
	return pageHigh - head - footLine*folded(footSize, pageWide, false, d.foot()...) - 4
}

// sides lays all cards out on sides.
func (d Document) sides() ([]side, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	var out []side
	for i := range d.Cards {
		c := &d.Cards[i]
		full := d.room(c)
		first := len(out)
		var now []Block
		left := full
		turn := func() {
			out = append(out, side{card: c, n: len(out) - first + 1, blocks: now})
			now, left = nil, full
		}
		for k, b := range c.Blocks {
			for b != nil {
				head, rest := b.split(left, full)
				switch {
				case head != nil && !(k+1 < len(c.Blocks) && rest == nil && leads(b, c.Blocks[k+1], left, full)):
					now, left = append(now, head), left-head.height()
				case len(now) == 0:
					return nil, fmt.Errorf("card %s: a part of it is taller than a side of paper: %w", c.Name, ErrTall)
				default:
					turn()
					continue
				}
				b = rest
				if b != nil {
					turn()
				}
			}
		}
		if len(now) > 0 || len(out) == first {
			turn()
		}
		for k := first; k < len(out); k++ {
			out[k].of = len(out) - first
		}
	}
	return out, nil
}

// leads reports whether a heading would be left alone at the foot of a side.
func leads(b, next Block, left, full float64) bool {
	if _, ok := b.(Heading); !ok || left == full {
		return false
	}
	head, _ := next.split(left-b.height(), full)
	return head == nil
}
