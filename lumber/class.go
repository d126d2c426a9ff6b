package lumber

import (
	"strings"

	"example.org/floewright/lumber/measure"
)

// class is what the tables call a section by its thickness and width.
type class int

const (
	board     class = iota // thinner than 2 in. nominal: no design values
	dimension              // 2 to 4 in. thick
	heavySize              // 5 in. and more on both sides
)

// swell is by how much a wet or a badly planed piece may differ from the dressed
// size and still count as that size. Our choice.
const swell = measure.Inch / 16

// tableBoard marks a Grade without design values.
const tableBoard = "none: thinner than 2 in. nominal"

// classOf returns a section's class.
func classOf(s Section) class {
	switch t := s.thin(); {
	case t < 1.5*measure.Inch-swell:
		return board
	case t < 4.5*measure.Inch-swell:
		return dimension
	}
	return heavySize
}

// widestOf returns the greatest dressed width, m, that counts as a nominal one.
func widestOf(d dressing) float64 { return d.green*measure.Inch + swell }

// nominalAbove returns the nominal width, in inches, of the class a dressed
// width belongs to, taking the next wider one in between; 14 is everything wider
// than 12. Size factors fall with width, so that this is the cautious side.
func nominalAbove(width float64) float64 {
	for _, w := range widths {
		if width <= widestOf(w) {
			return w.n
		}
	}
	return 14
}

// nominalBelow is [nominalAbove] with the next narrower class in between: the
// cautious side for the flat use factor, which rises with width.
func nominalBelow(width float64) float64 {
	n := 2.0
	for _, w := range widths {
		if width >= w.dry*measure.Inch-swell {
			n = w.n
		}
	}
	return n
}

// fourThick reports whether a section counts as 4 in. thick.
func fourThick(s Section) bool { return s.thin() >= 3.5*measure.Inch-swell }

// posts reports whether a timber counts as Posts & Timbers: its width at most
// 2 in. greater than its thickness. The trade's rule, NDS 4.1.3.
func posts(s Section) bool { return s.wide()-s.thin() <= 2*measure.Inch+1e-9 }

// tableFits reports whether values of a table stand for a section.
func tableFits(table string, s Section) bool {
	switch {
	case table == "":
		return true
	case table == tableBoard:
		return classOf(s) == board
	case !strings.HasPrefix(table, "4D"):
		return classOf(s) == dimension
	case classOf(s) != heavySize:
		return false
	case strings.HasSuffix(table, "Beams & Stringers"):
		return !posts(s)
	case strings.HasSuffix(table, "Posts & Timbers"):
		return posts(s)
	}
	return true
}

// Tables of values taken from several species: the size factors of Table 4A
// still apply within it ("4A mixed"); values by species and values by width have
// no size factor in common ("mixed").
const (
	tableMixed   = "mixed"
	tableMixed4A = "4A mixed"
)

// mixedTable returns the table whose rules are the cautious ones for values
// taken from two tables.
func mixedTable(a, b string) string {
	switch {
	case strings.HasPrefix(a, "4D") && strings.HasPrefix(b, "4D"):
		if strings.HasSuffix(a, "5x5 and larger") {
			return b
		}
		return a
	case a == tableBoard:
		return a
	case strings.HasPrefix(a, "4A") && strings.HasPrefix(b, "4A"):
		return tableMixed4A
	}
	return tableMixed
}
