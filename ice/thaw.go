package ice

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Thaw is one body's rule for hours above freezing in the last 24.
type Thaw struct {
	From      float64 // h of the last 24 above freezing, from which the factor counts
	Thickness float64 // a ratio: factor on the thickness required
	Load      float64 // a ratio: factor on the load
	Off       float64 // h from which no load is covered
	Source    *measure.Source
}

var thaws = []Thaw{
	{From: 6, Thickness: 2, Load: 1, Off: 24, Source: minnesotaThaw},
	{From: 6, Thickness: 1, Load: 1.3, Off: 24, Source: &measure.Source{
		Title: "US Army Corps of Engineers EM 1110-2-1612", Edition: "2002", Locator: "chapter 8, and CRREL notes", Status: measure.Memory,
	}},
}

// Thaws returns the thaw rules, each with its source, strictest first; the two differ
// in severity. The verdicts of a [Sheet] need no hours: there any day that reaches 0
// °C counts as a thaw.
func Thaws() []Thaw { return append([]Thaw(nil), thaws...) }

// Factor returns the factor on the thickness required after so many of the last
// 24 hours above freezing; a factor on the load counts by its square root,
// after P = A h². The error is of class ErrUnfit where the rule covers no load,
// measure.ErrRange outside 0 to 24 hours, and for a rule of one's own whose
// factors are none.
func (t Thaw) Factor(hours float64) (float64, error) {
	r := measure.Range{Kind: measure.Time, Lo: 0, Hi: 24 * 3600, Source: t.Source}
	if err := r.Check("time above freezing in the last 24 h", hours*3600); err != nil {
		return math.NaN(), err
	}
	factor := measure.Range{Kind: measure.Ratio, Lo: 0, Hi: 100, Source: sizeRange}
	if err := factor.Check("factor on the thickness", t.Thickness); err != nil {
		return math.NaN(), err
	}
	if err := factor.Check("factor on the load", t.Load); err != nil {
		return math.NaN(), err
	}
	switch {
	case !(hours < t.Off):
		return math.NaN(), unfit("air", "thawing ice", "stay off ("+t.Source.String()+")")
	case !(hours < t.From):
		return math.Max(1, math.Max(t.Thickness, math.Sqrt(t.Load))), nil
	}
	return 1, nil
}
