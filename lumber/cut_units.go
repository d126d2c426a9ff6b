package lumber

import (
	"math"
	"slices"
)

// Lengths are cut in whole units of 1/320 mm: a tenth of a millimetre is 32 of
// them and a sixty-fourth of an inch 127, so that neither a metric nor an inch
// list loses a fit to rounding.
const cutUnits = 320000 // per metre

// unitSlack is how far, in units, a length may lie off a whole number and still
// count as that number: the noise of arithmetic on binary fractions.
const unitSlack = 1e-3

// unitsUp and unitsDown turn metres into units, on the cautious side: pieces,
// kerf and trim up, stock down.
func unitsUp(x float64) int64   { return int64(math.Ceil(float64(x*cutUnits) - unitSlack)) }
func unitsDown(x float64) int64 { return int64(math.Floor(float64(x*cutUnits) + unitSlack)) }

// metres turns units back.
func metres(u int64) float64 { return float64(u) / cutUnits }

// A stretch is a part of a board, in units from one end.
type stretch struct{ from, to int64 }

// clear returns the stretches of a board of a length that pieces may be cut
// from: what lies between the trimmed ends and the defects, in order. A defect
// narrower than the kerf is taken as wide as the kerf about its middle, since the
// cut at it takes so much.
func (w Saw) clear(length float64, defects [][2]float64) []stretch {
	kerf, trim := unitsUp(w.Kerf), unitsUp(w.Trim)
	end := unitsDown(length)
	var bad []stretch
	for _, d := range defects {
		from, to := unitsDown(d[0]), unitsUp(d[1])
		if short := kerf - (to - from); short > 0 {
			from -= short / 2
			to = from + kerf
		}
		bad = append(bad, stretch{from, to})
	}
	slices.SortFunc(bad, func(a, b stretch) int { return int(a.from - b.from) })
	var out []stretch
	at := trim
	for _, d := range bad {
		if to := min(d.from, end-trim); to > at {
			out = append(out, stretch{at, to})
		}
		at = max(at, d.to)
	}
	if end-trim > at {
		out = append(out, stretch{at, end - trim})
	}
	return out
}
