package ice

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/floewright/lumber/measure"
)

// A Reading is the height of the ice's top above the water in the hole at the
// dock.
type Reading struct {
	Age       float64 // s ago
	Freeboard float64 // m, negative where water stands over the ice
}

// A Gauge is a series of readings, in any order: the builder's own measure of
// what the sheet does under the dock. It needs no law.
type Gauge []Reading

// readingError is how far a reading at a fixed mark may be off, in m, twice its
// standard deviation: our choice.
const readingError = 0.003

// A Fall is the trend of a gauge. Times are in s from now; +Inf is never.
type Fall struct {
	Newest float64 // m, the last reading
	Rate   float64 // m/s, positive where the freeboard falls: the line of least squares
	Zero   float64 // s, when that line reaches zero
	Early  float64 // s, by the steepest fall from any reading to the last, read 3 mm wrong: for verdicts
	Late   float64 // s, where the 95 % side of the line reaches zero
}

func (g Gauge) check() error {
	for i, r := range g {
		n := fmt.Sprintf("reading %d, ", i+1)
		if err := (measure.Range{Kind: measure.Time, Lo: 0, Hi: 1e8, Source: sizeRange}).Check(n+"age", r.Age); err != nil {
			return err
		}
		if err := (measure.Range{Kind: measure.Length, Lo: -1, Hi: 1, Source: sizeRange}).Check(n+"freeboard", r.Freeboard); err != nil {
			return err
		}
	}
	return nil
}

// newest returns the last reading; of two at one time the lower.
func (g Gauge) newest() Reading {
	best := Reading{Age: math.Inf(1), Freeboard: math.NaN()}
	for _, r := range g {
		if r.Age < best.Age || r.Age == best.Age && r.Freeboard < best.Freeboard {
			best = r
		}
	}
	return best
}

// daily is the most between two readings of one mark that is read every day, s: our
// choice, a morning and the evening of the next day.
const daily = 1.5 * measure.Day

// doubts lists why the gauge does not speak of today and of what is to come: not read
// today; not read daily over the last days, as many as of the air; or rising by more
// than a level is read wrong, as where the lake falls from under the ice. since is how
// long the load has stood in s, NaN where it is not known.
func (g Gauge) doubts(since float64) []error {
	if len(g) == 0 || g.newest().Age > expiry {
		return []error{unfit("gauge", "a gauge not read for more than 24 hours", "read it again")}
	}
	var out []error
	ages := make([]float64, 0, len(g)+1)
	least := math.Inf(1)
	for _, r := range g {
		ages, least = append(ages, r.Age), math.Min(least, r.Freeboard)
	}
	if since > 0 {
		ages = append(ages, since)
	}
	slices.Sort(ages)
	for i, age := range ages[1:] {
		if newer := ages[i]; newer < days*measure.Day && age-newer > daily {
			out = append(out, unfit("gauge", "a gauge not read daily", fmt.Sprintf("of the last %d days %s are without a reading", days, inDays(age-newer))))
			break
		}
	}
	if rise := g.newest().Freeboard - least; rise > levelError {
		out = append(out, unfit("gauge", "ice that the water falls away from", fmt.Sprintf("in the hole at the dock it stands %s lower below the top than it stood: everybody off, and look whether the sheet still rests on the water (%s)",
			measure.Length.Format(rise, measure.SI), levelDrop)))
	}
	return out
}

// Fall returns the trend: the line of least squares (Gauss) and Student's band about
// it; the steepest fall is our choice. The error is of class measure.ErrUnknown for fewer
// than three readings, or all at one time. It extrapolates a straight line: read
// daily, since creep, snow and thaw steepen it.
func (g Gauge) Fall() (Fall, error) {
	f := Fall{Newest: math.NaN(), Rate: math.NaN(), Zero: math.NaN(), Early: math.NaN(), Late: math.NaN()}
	if err := g.check(); err != nil {
		return f, err
	}
	n := float64(len(g))
	var t0, f0 float64
	for _, r := range g {
		t0, f0 = t0-r.Age/n, f0+r.Freeboard/n
	}
	var xx, xy, rest float64
	for _, r := range g {
		xx += (-r.Age - t0) * (-r.Age - t0)
		xy += (-r.Age - t0) * (r.Freeboard - f0)
	}
	if len(g) < 3 || !(xx > 0) {
		return f, unknown("gauge", "a trend needs three readings at different times")
	}
	slope := xy / xx
	for _, r := range g {
		d := r.Freeboard - f0 - slope*(-r.Age-t0)
		rest += d * d
	}
	last := g.newest()
	f.Newest, f.Rate = last.Freeboard, -slope
	f.Zero = crossing(-last.Age, f0+slope*(-last.Age-t0), -slope)

	f.Early = f.Zero
	for _, r := range g {
		if r.Age > last.Age {
			f.Early = math.Min(f.Early, crossing(-last.Age, last.Freeboard-readingError, (r.Freeboard-last.Freeboard+readingError)/(r.Age-last.Age)))
		}
	}
	// The upper side of the band about the line, t s √(1/n + (x - x̄)²/Σ(x - x̄)²),
	// the scatter no less than that of a reading.
	s := math.Max(math.Sqrt(rest/(n-2)), readingError/2) * distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 2}.Quantile(0.95)
	above := func(x float64) bool {
		return f0+slope*(x-t0)+s*math.Sqrt(1/n+(x-t0)*(x-t0)/xx) <= 0
	}
	f.Late = math.Inf(1)
	if f.Zero < 1e8 && above(1e9) {
		lo, hi := -last.Age, 1e9
		for range 80 {
			if mid := (lo + hi) / 2; above(mid) {
				hi = mid
			} else {
				lo = mid
			}
		}
		f.Late = math.Max(hi, 0)
	}
	return f, nil
}

// crossing returns when a height that falls at a rate reaches zero, 0 where it
// has, +Inf where it does not fall.
func crossing(at, height, rate float64) float64 {
	switch {
	case height <= 0:
		return 0
	case !(rate > 0):
		return math.Inf(1)
	}
	return math.Max(0, at+height/rate)
}

// Check asks of the gauge alone whether the freeboard lasts for a further time
// in s: the earliest zero of [Gauge.Fall] against it. Short means move the dock. There is no
// answer for fewer than three readings, a last one older than 24 hours, days of the last
// five left out, or a level that falls away by more than 20 mm.
func (g Gauge) Check(stay float64) (measure.Check, error) {
	name := "freeboard in the hole at the dock, for " + inDays(stay)
	if err := rangeStay.Check("further time", stay); err != nil {
		return measure.Refuse(name, err), err
	}
	if err := g.check(); err != nil {
		return measure.Refuse(name, err), err
	}
	c := measure.Check{
		Name: name, Kind: measure.Time, AtLeast: true, Hazard: true, Rule: minnesotaHole, Value: math.NaN(), Limit: stay,
		Rests: []measure.Assumption{{Name: "gauge", Text: fmt.Sprintf("%d readings", len(g)), Known: measure.Measured}},
	}
	f, err := g.Fall()
	switch {
	case err == nil:
		c.Value = math.Min(f.Early, horizon)
	case len(g) > 0 && g.newest().Freeboard <= 0:
		c.Value = 0 // one reading is enough to see water over the ice
	default:
		c.Err = err
	}
	if doubts := g.doubts(math.NaN()); len(doubts) > 0 && !(c.Value < stay) {
		c.Err = doubts[0]
	}
	c.Notes = append(c.Notes, "read it daily at one mark; EXPIRY: 24 hours after the last reading, or at once on thaw, snow or a change of the water level")
	if err == nil && f.Rate > 0 {
		c.Notes = append(c.Notes, fmt.Sprintf("falling %.1f mm a day: move the dock before it reaches zero", f.Rate*measure.Day*1000))
	}
	c.Notes = append(c.Notes, "says nothing about people beside the dock")
	return c, nil
}

// minnesotaHole is the rule that the gauge extends: move when water runs over.
var minnesotaHole = &measure.Source{
	Title:   "Minnesota Department of Natural Resources, parked vehicles",
	Locator: "a hole beside it; move when water runs over", Status: measure.Read,
}
