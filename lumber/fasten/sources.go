package fasten

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// nds returns a place in the edition of the standard that the package follows.
func nds(locator string, st measure.Status) *measure.Source {
	return &measure.Source{
		Title:   "National Design Specification for Wood Construction (American Wood Council)",
		Edition: "2018, allowable stress design", Locator: locator, Status: st,
	}
}

func practice(what string) *measure.Source {
	return &measure.Source{Title: what, Status: measure.CommonPractice}
}

func choice(what string) *measure.Source {
	return &measure.Source{Title: what, Status: measure.OwnChoice}
}

// Sources of the rules, as far as they were read.
var (
	srcYield    = nds("Tables 12.3.1A and 12.3.1B", measure.Quoted)
	srcGap      = &measure.Source{Title: "Technical Report 12, General Dowel Equations (American Wood Council)", Edition: "yield model with a gap", Locator: "solid members", Status: measure.Memory}
	srcBearing  = nds("12.3.3", measure.Quoted)
	srcDepthLag = nds("12.1.4.6", measure.Quoted)
	srcDepth    = nds("12.1.5.6 and 12.1.6.4", measure.Quoted)
	srcReduced  = nds("footnotes of Tables 12J to 12P, reduced penetration", measure.Memory)
	srcG        = nds("Tables 12.2A and 12.3.3A", measure.Quoted)

	srcCM    = nds("Table 11.3.3", measure.Quoted)
	srcCMPin = nds("Table 11.3.3, footnote 2", measure.Memory)
	srcCt    = nds("Table 11.3.4", measure.Quoted)
	srcCg    = nds("11.3.6, equation 11.3-1", measure.Quoted)
	srcCd    = nds("12.5.1.2", measure.Quoted)
	srcEnd   = nds("Table 12.5.1A", measure.Quoted)
	srcRow   = nds("Table 12.5.1B", measure.Quoted)
	srcEdge  = nds("Table 12.5.1C", measure.Quoted)
	srcRows  = nds("Table 12.5.1D", measure.Quoted)
	srcOuter = nds("12.5.1.3", measure.Quoted)
	srcLagW  = nds("Table 12.5.1E", measure.Quoted)
	srcCeg   = nds("12.5.2", measure.Quoted)
	srcCtn   = nds("12.5.4", measure.Quoted)
	srcSplit = nds("Commentary C12.1.5.7 and C12.1.6.6", measure.Quoted)

	srcLagPull    = nds("12.2.1 and Table 12.2A", measure.Quoted)
	srcScrewPull  = nds("12.2.2 and Table 12.2B", measure.Quoted)
	srcNailPull   = nds("12.2.3 and Table 12.2C", measure.Quoted)
	srcRingPull   = nds("12.2.3, post-frame ring shank nails", measure.Memory)
	srcHead       = nds("Table 12.2F, head pull-through", measure.Quoted)
	srcCombined   = nds("12.4.1, equation 12.4-1", measure.Quoted)
	srcCombinedNl = nds("12.4.2, equation 12.4-2", measure.Quoted)
	srcWasher     = nds("3.10.2 under a washer, Cb not used", measure.Memory)
	srcSteel      = &measure.Source{Title: "Tension of mild steel bolts and lag screws", Locator: "20 ksi (AISC, A307, allowable stress) taken on the root area", Status: measure.Memory}
	srcLocal      = nds("Appendix E", measure.Memory)
)

// inches returns a length in inches, free of the last digit's noise of the
// conversion, since the rules switch at printed diameters.
func inches(x float64) float64 { return clean(x / measure.Inch) }

// psis returns a stress in psi, likewise.
func psis(x float64) float64 { return clean(x / measure.PSI) }

func clean(x float64) float64 {
	if r := math.Round(x * 1e9); math.Abs(r) < 1e15 {
		return r / 1e9
	}
	return x
}

// hair is the slack of a comparison of lengths in inches.
const hair = 1e-6

// Ranges that the fields of the package are held to.
var (
	lengths   = measure.Range{Kind: measure.Length, Hi: 30, OpenLo: true}
	distances = measure.Range{Kind: measure.Length, Hi: 30}
	gravities = measure.Range{Kind: measure.Ratio, Lo: 0.31, Hi: 0.73, Source: srcG}
	rightTurn = measure.Range{Kind: measure.Angle, Hi: math.Pi/2 + 1e-9}
	forces    = measure.Range{Kind: measure.Force, Hi: 1e9}
)

// checkAll returns the first failure of a list of values against their ranges.
func checkAll(list ...ranged) error {
	for _, c := range list {
		if err := c.within.Check(c.field, c.x); err != nil {
			return err
		}
	}
	return nil
}

type ranged struct {
	field  string
	x      float64
	within measure.Range
}

// unknown returns the error for something that must be said.
func unknown(field, want string) error {
	return &measure.Error{Field: field, Class: measure.ErrUnknown, Want: want}
}
