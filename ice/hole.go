package ice

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Hole is one drilled hole, lengths in metres. NaN means not measured, and so
// does 0 unless Looked is set.
type Hole struct {
	Name  string  // where it is: "pad, north corner"
	Spot  Spot    // what it stands for; the zero value reads it from the name
	X, Y  float64 // m, where it is in the axes of the loads; two within half a metre are one place
	Clear float64 // clear (black) ice; with a gap, the thickest single layer of it
	White float64 // white (snow, slush) ice on top of it
	Gap   float64 // water, air or wet slush between layers
	Water float64 // how far the water in the hole stands below the top of the ice
	Snow  float64 // snow on top

	// Looked says that whoever drilled looked for all of these: a zero then says
	// that there is none, while without it a zero is not known.
	Looked bool

	// Hard says that the white ice is hard and dark and frozen to the clear
	// ice. White ice that is brittle, light, or not looked at counts nothing.
	Hard bool
}

// A Spot is what a hole stands for.
type Spot int

// The spots. At least four corners and the middle of the pad and one hole on
// the walk from the shore must be drilled: corners that stand out by half a metre
// and more, the middle between them and within 30 m of each, and the walk
// outside them, within 30 m. ByName, the zero value, looks for
// the words walk, corner, middle or centre, and dock or gauge in the name, in
// this order; a name without any of them stands for none.
const (
	ByName Spot = iota
	PadCorner
	PadMiddle
	Walk
	AtDock // beside what stands on the ice, for its water level
)

// spotNames pairs spots and the words of a name, as ByName looks for them.
var spotNames = []struct {
	spot  Spot
	name  string
	words []string
}{
	{Walk, "walk from the shore", []string{"walk"}},
	{PadCorner, "pad corner", []string{"corner"}},
	{PadMiddle, "pad middle", []string{"middle", "centre", "center"}},
	{AtDock, "at the dock", []string{"dock", "gauge"}},
}

// String returns the spot in words.
func (s Spot) String() string {
	for _, n := range spotNames {
		if n.spot == s {
			return n.name
		}
	}
	return "by its name"
}

// spot returns what the hole stands for, ByName for none.
func (h Hole) spot() Spot {
	if h.Spot != ByName {
		return h.Spot
	}
	name := strings.ToLower(h.Name)
	for _, n := range spotNames {
		for _, w := range n.words {
			if strings.Contains(name, w) {
				return n.spot
			}
		}
	}
	return ByName
}

// settled returns the hole with NaN for each zero that nobody looked for.
func (h Hole) settled() Hole {
	if h.Looked {
		return h
	}
	for _, x := range []*float64{&h.Clear, &h.White, &h.Gap, &h.Water, &h.Snow} {
		if *x == 0 {
			*x = math.NaN()
		}
	}
	return h
}

// complete reports whether every number of the hole was measured.
func (h Hole) complete() bool {
	return !math.IsNaN(h.Clear + h.White + h.Gap + h.Water + h.Snow)
}

// check refuses sizes that no hole has. NaN passes: it is not measured.
func (h Hole) check(n int) error {
	for _, f := range []struct {
		name   string
		x, low float64
	}{
		{"clear ice", h.Clear, 0},
		{"white ice", h.White, 0},
		{"gap", h.Gap, 0},
		{"water level", h.Water, -thickest},
		{"snow", h.Snow, 0},
	} {
		if math.IsNaN(f.x) {
			continue
		}
		r := measure.Range{Kind: measure.Length, Lo: f.low, Hi: thickest, Source: sizeRange}
		if err := r.Check(fmt.Sprintf("hole %d (%s), %s", n+1, h.label(n), f.name), f.x); err != nil {
			return err
		}
	}
	for _, x := range []float64{h.X, h.Y} {
		if math.IsNaN(x) {
			continue
		}
		if err := rangePlace.Check(fmt.Sprintf("hole %d (%s), place", n+1, h.label(n)), x); err != nil {
			return err
		}
	}
	if h.Spot < ByName || h.Spot > AtDock {
		return &measure.Error{Field: fmt.Sprintf("hole %d, spot", n+1), Text: fmt.Sprint(int(h.Spot)), Class: measure.ErrName, Want: "one of PadCorner, PadMiddle, Walk, AtDock"}
	}
	return nil
}

var sizeRange = own("a size beyond this is taken for a slip of the pen")

func (h Hole) label(n int) string {
	if h.Name != "" {
		return h.Name
	}
	return fmt.Sprintf("hole %d", n+1)
}

// A Scheme says how white ice counts. The sources disagree; the zero value is
// the most cautious reading of them all.
type Scheme int

// The schemes, strictest first.
const (
	// Strictest counts the clear ice alone, and doubles the thickness required
	// as soon as there is any white ice.
	Strictest Scheme = iota
	// DoubleWhite counts hard white ice in full and doubles the thickness
	// required wherever there is white ice (Minnesota DNR).
	DoubleWhite
	// ClearAlone counts white ice as nothing: the rule for brittle or light
	// slush ice (NVE; Finnish Meteorological Institute).
	ClearAlone
	// HalfWhite counts clear ice and half of the hard white ice frozen to it
	// (US Army TM 5-852-1; NVE; Finnish Meteorological Institute).
	HalfWhite
)

// schemes holds the share of hard white ice that counts and the factor on the
// thickness required where there is white ice.
var schemes = []struct {
	name        string
	share, need float64
	source      *measure.Source
}{
	Strictest:   {"clear ice alone, doubled thickness where there is white ice", 0, 2, own("the strictest of all schemes that were read")},
	DoubleWhite: {"all hard ice, doubled thickness where there is white ice", 1, 2, minnesotaWhite},
	ClearAlone:  {"clear ice alone", 0, 1, norway},
	HalfWhite:   {"clear ice and half of the hard white ice", 0.5, 1, manualGuide},
}

// String returns how the scheme counts.
func (c Scheme) String() string {
	if c < 0 || int(c) >= len(schemes) {
		return "no scheme"
	}
	return schemes[c].name
}

// Source returns where the scheme comes from, nil for an unknown scheme.
func (c Scheme) Source() *measure.Source {
	if c < 0 || int(c) >= len(schemes) {
		return nil
	}
	return schemes[c].source
}

// Effective returns the effective thickness of the ice at a hole in m and the
// factor, 1 or more, by which white ice raises the thickness required. Layers
// with a gap between them never add: the strongest counts alone (NVE; Finnish
// Meteorological Institute). The error is of class measure.ErrUnknown where
// the ice was not measured or a zero not looked for, ErrRange for sizes that no hole has, ErrName for
// an unknown scheme.
func (c Scheme) Effective(h Hole) (thickness, factor float64, err error) {
	if c < 0 || int(c) >= len(schemes) {
		return math.NaN(), math.NaN(), c.unknown()
	}
	if err := h.check(0); err != nil {
		return math.NaN(), math.NaN(), err
	}
	if h = h.settled(); math.IsNaN(h.Clear + h.White + h.Gap) {
		return math.NaN(), math.NaN(), unknown("hole", "clear ice, white ice and gap must all be measured, and looked for where they are 0")
	}
	s := schemes[c]
	white := 0.0
	if h.Hard {
		white = s.share * h.White
	}
	thickness, factor = h.Clear+white, 1
	if h.Gap > 0 {
		thickness = math.Max(h.Clear, white)
	}
	if h.White > 0 {
		factor = s.need
	}
	return thickness, factor, nil
}

func (c Scheme) unknown() error {
	return &measure.Error{
		Field: "scheme of white ice", Text: fmt.Sprint(int(c)), Class: measure.ErrName,
		Want: "one of Strictest, DoubleWhite, ClearAlone, HalfWhite",
	}
}
