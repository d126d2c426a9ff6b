package lumber

import (
	"math"
	"strconv"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A dressing is one line of the standard's list: a nominal side and what is left
// of it, in inches, surfaced dry (moisture 19 % or less) or green.
type dressing struct {
	nominal    string
	n          float64
	dry, green float64
}

// thicknesses and widths are the sides of boards and dimension lumber; a piece
// with both sides 5 in. or more is a timber and follows [timber].
var thicknesses = []dressing{
	{"1", 1, 3.0 / 4, 25.0 / 32},
	{"5/4", 5.0 / 4, 1, 1 + 1.0/32},
	{"6/4", 6.0 / 4, 1.25, 1.25 + 1.0/32},
	{"2", 2, 1.5, 1.5 + 1.0/16},
	{"2-1/2", 2.5, 2, 2 + 1.0/16},
	{"3", 3, 2.5, 2.5 + 1.0/16},
	{"4", 4, 3.5, 3.5 + 1.0/16},
}

var widths = []dressing{
	{"2", 2, 1.5, 1.5 + 1.0/16},
	{"3", 3, 2.5, 2.5 + 1.0/16},
	{"4", 4, 3.5, 3.5 + 1.0/16},
	{"5", 5, 4.5, 4.625},
	{"6", 6, 5.5, 5.625},
	{"8", 8, 7.25, 7.5},
	{"10", 10, 9.25, 9.5},
	{"12", 12, 11.25, 11.5},
	{"14", 14, 13.25, 13.5},
}

// timber returns the dressed sides of a nominal side of 5 in. or more: a half
// inch off green; dry a half inch off 5 and 6, three quarters off 7 to 15, an
// inch off above.
func timber(n float64) (dry, green float64, ok bool) {
	if !(n >= 5 && n <= 24) || n != math.Trunc(n) {
		return 0, 0, false
	}
	switch {
	case n <= 6:
		dry = n - 0.5
	case n <= 15:
		dry = n - 0.75
	default:
		dry = n - 1
	}
	return dry, n - 0.5, true
}

// Size returns the dressed section, dry, of a nominal size as it is called at
// the yard: "2x8", "5/4 x 6", "6×6", "2-1/2x4". The first number is taken as the
// width and the second as the depth, so that "2x8" stands on edge and "8x2" lies
// flat. Design uses the dry size for lumber surfaced green as well. An unknown
// size is a [*measure.Error] of class [measure.ErrName] that lists what is known.
//
// Source: PS 20, as reproduced by a public engineering reference.
func Size(nominal string) (Section, error) {
	w, d, err := readSize(nominal)
	if err != nil {
		return Section{}, err
	}
	return Section{Width: w.dry * measure.Inch, Depth: d.dry * measure.Inch}, nil
}

// GreenSize returns the dressed section of a nominal size surfaced green, as
// [Size] does for dry: what fresh, wet lumber measures.
func GreenSize(nominal string) (Section, error) {
	w, d, err := readSize(nominal)
	if err != nil {
		return Section{}, err
	}
	return Section{Width: w.green * measure.Inch, Depth: d.green * measure.Inch}, nil
}

// BoardFeet returns the board feet of a piece of a nominal size and a length in
// metres: nominal inches times nominal inches times feet over twelve, a
// thickness below 1 in. counting as 1. The rule of the trade.
func BoardFeet(nominal string, length float64) (float64, error) {
	w, d, err := readSize(nominal)
	if err != nil {
		return 0, err
	}
	if err := lengths.Check("length", length); err != nil {
		return 0, err
	}
	return w.n * d.n * length / measure.Foot / 12, nil
}

// lengths is the range of a piece's length.
var lengths = measure.Range{Kind: measure.Length, Hi: 30, OpenLo: true}

// sizeSigns brings the signs between two sides into one.
var sizeSigns = strings.NewReplacer("×", "x", "X", "x", "*", "x", " by ", "x", "\"", "", "″", "", " ", "")

// readSize splits a nominal size into its two sides.
func readSize(nominal string) (w, d dressing, err error) {
	bad := func(why string) error {
		return &measure.Error{
			Field: "size", Text: nominal, Class: measure.ErrName, Why: why,
			Want: knownSizes(),
		}
	}
	clean := sizeSigns.Replace(strings.TrimSpace(nominal))
	first, second, ok := strings.Cut(clean, "x")
	if !ok || strings.Contains(second, "x") {
		return w, d, bad("a size is two nominal sides; the length is given apart")
	}
	a, okA := readSide(first)
	b, okB := readSide(second)
	if !okA || !okB {
		return w, d, bad("")
	}
	if math.Min(a, b) >= 5 {
		w, okA = timberSide(a)
		d, okB = timberSide(b)
	} else if a <= b {
		w, okA = side(thicknesses, a)
		d, okB = side(widths, b)
	} else {
		w, okA = side(widths, a)
		d, okB = side(thicknesses, b)
	}
	if !okA || !okB {
		return w, d, bad("")
	}
	return w, d, nil
}

func timberSide(n float64) (dressing, bool) {
	dry, green, ok := timber(n)
	return dressing{n: n, dry: dry, green: green}, ok
}

func side(list []dressing, n float64) (dressing, bool) {
	for _, s := range list {
		if s.n == n {
			return s, true
		}
	}
	return dressing{}, false
}

// readSide reads "2", "2.5", "5/4" or "2-1/2".
func readSide(s string) (float64, bool) {
	whole := 0.0
	if i, rest, ok := strings.Cut(s, "-"); ok {
		v, err := strconv.ParseFloat(i, 64)
		if err != nil || !strings.Contains(rest, "/") {
			return 0, false
		}
		whole, s = v, rest
	}
	num, den, fraction := strings.Cut(s, "/")
	n, err := strconv.ParseFloat(num, 64)
	if err != nil {
		return 0, false
	}
	if fraction {
		d, err := strconv.ParseFloat(den, 64)
		if err != nil || !(d > 0) {
			return 0, false
		}
		n /= d
	}
	n += whole
	return n, n > 0 && !math.IsInf(n, 0)
}

// knownSizes lists the nominal sides for an error.
func knownSizes() string {
	names := func(list []dressing) string {
		var s []string
		for _, d := range list {
			s = append(s, d.nominal)
		}
		return strings.Join(s, ", ")
	}
	return "a thickness of " + names(thicknesses) + " by a width of " + names(widths) +
		", as in \"2x8\" or \"5/4x6\", or a timber of 5 to 24 by 5 to 24 (PS 20)"
}
