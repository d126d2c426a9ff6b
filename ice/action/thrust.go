package action

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Thrust is one published figure of the push of an ice sheet that warms
// between shores. All are of long rigid walls: a dock that moves with the ice has
// no published figure.
type Thrust struct {
	Of        string        // what the figure is
	Low, High float64       // N/m
	Printed   string        // as the source prints it, with its unit
	Applies   string        // to what
	Pressure  float64       // Pa, where the source prints a pressure on the thickness; otherwise 0
	Thickness measure.Range // of the ice, where the source names one; otherwise the zero Range
	Source    *measure.Source
}

const kN = measure.Kilonewton

var kip = measure.Kip / measure.Foot

var (
	sintef = &measure.Source{
		Title: "SINTEF, Methods for prediction of thermally-induced ice loads on dams and hydro-electrical structures", Locator: "abstract", Status: measure.Read,
	}
	ceati  = &measure.Source{Title: "CEATI T192700 #0247", Locator: "abstract", Status: measure.Read}
	em2200 = &measure.Source{Title: "US Army Corps of Engineers EM 1110-2-2200", Status: measure.Memory}
	em1612 = &measure.Source{Title: "US Army Corps of Engineers EM 1110-2-1612", Status: measure.Memory}
)

const rigid = "long rigid walls of dams"

var thrusts = []Thrust{
	{Of: "design, Norway", Low: 100 * kN, High: 150 * kN, Printed: "100-150 kN/m", Applies: rigid, Source: sintef},
	{Of: "design, Canada and USA", Low: 150 * kN, High: 220 * kN, Printed: "150-220 kN/m", Applies: rigid, Source: sintef},
	{Of: "greatest in the laboratory, Sweden", Low: 250 * kN, High: 250 * kN, Printed: "250 kN/m", Applies: "laboratory", Source: sintef},
	{Of: "guidelines in use", Low: 50 * kN, High: 250 * kN, Printed: "50-250 kN/m", Applies: "concrete dams", Source: &measure.Source{
		Title: "Estimating the ice loads on concrete dams based on their structural response, Water 14(4), 597", Edition: "2022", Locator: "introduction", Status: measure.Read,
	}},
	{Of: "dam study, Colorado", Low: 10 * kip, High: 10 * kip, Printed: "10,000 lb/ft", Applies: rigid, Source: &measure.Source{
		Title: "Colorado Water Conservation Board, dam study, document 69323", Locator: "page 43", Status: measure.Read,
	}},
	{Of: "once in 100 years, three Canadian stations", Low: 188 * kN, High: 378 * kN, Printed: "188, 215, 378 kN/m", Applies: "walls of generating stations", Source: ceati},
	{Of: "greatest measured, small regulated reservoir", Low: 0, High: 85 * kN, Printed: "85 kN/m", Applies: "reservoir whose level varies by 0.35 m", Source: &measure.Source{
		Title: "measurements of ice loads at a small regulated reservoir (title not noted)", Status: measure.Read,
	}},
	{
		Of: "design pressure, USA", Low: 0, High: 10 * kip, Printed: "5,000 lb/ft²", Applies: "dams, ice not over 2 ft", Pressure: 5000 * measure.PSF,
		Thickness: measure.Range{Kind: measure.Length, Lo: 0, OpenLo: true, Hi: 2 * measure.Foot, Source: em2200}, Source: em2200,
	},
	{Of: "design, rigid structures, USA", Low: 10 * kip, High: 15 * kip, Printed: "10-15 kip/ft", Applies: "rigid structures", Source: em1612},
	{Of: "design, gates, USA", Low: 5 * kip, High: 5 * kip, Printed: "5 kip/ft", Applies: "gates and other yielding faces", Source: em1612},
	{Of: "design, Sweden, south to north", Low: 50 * kN, High: 200 * kN, Printed: "50, 100, 200 kN/m", Applies: "dams", Source: &measure.Source{
		Title: "Swedish practice for dams", Status: measure.Memory,
	}},
}

// Thrusts returns the published figures side by side. They differ several times
// over, and no model predicts what was measured (SINTEF review): there is no
// one number.
func Thrusts() []Thrust { return append([]Thrust(nil), thrusts...) }

// On returns the push on a straight face of a width in m by ice of a thickness
// in m, N: line load times width, or pressure times thickness times width where
// the source prints one. The error is of class measure.ErrRange where the
// source does not cover such ice. For faces near 5 and 10 m see ShortWall.
func (t Thrust) On(width, thickness float64) (Span, error) {
	if t.Source == nil {
		return Span{}, unknown("thrust of the ice")
	}
	if err := check("width of the face", width, sideRange); err != nil {
		return Span{}, err
	}
	r := t.Thickness
	if r.Source == nil {
		r = thickRange
	}
	if err := check("thickness of the ice", thickness, r); err != nil {
		return Span{}, err
	}
	if t.Pressure != 0 {
		p := t.Pressure * thickness * width
		return t.span(p, p)
	}
	return t.span(t.Low*width, t.High*width)
}

// span refuses a thrust of the caller's that is none.
func (t Thrust) span(low, high float64) (Span, error) {
	if !(low >= 0 && low <= high) || math.IsInf(high, 1) {
		return Span{}, measure.Range{Kind: measure.LineLoad, Lo: 0, Hi: 1e8, Source: slip}.Check("thrust of the ice", math.Min(low, -high))
	}
	return Span{t.Of, low, high, t.Source}, nil
}

// shortWall is where short walls were compared with the far field.
var shortWall = measure.Range{Kind: measure.Length, Lo: 5, Hi: sideRange.Hi, Source: ceati}

// ShortWall returns how many times the thrust far off a wall of a width in m
// takes: 1.10 to 1.15 at 5 m, 1.05 to 1.10 at 10 m, both ends between, 1 to 1.10
// beyond. Narrower walls take more, and no figure was read. (CEATI abstract.)
func ShortWall(width float64) (Span, error) {
	if err := check("width of the wall", width, shortWall); err != nil {
		return Span{}, err
	}
	s := Span{"short wall", 1, 1.10, ceati}
	switch {
	case width == 5:
		s.Low, s.High = 1.10, 1.15
	case width < 10:
		s.Low, s.High = 1.05, 1.15
	case width == 10:
		s.Low = 1.05
	}
	return s, nil
}
