package ice

import (
	"fmt"
	"math"
	"time"

	"example.org/floewright/lumber/measure"
)

// A Flood says when water may come over the ice under what stands on it. A
// flooded dock freezes in with the next frost.
//
// Its check is about the dock alone: it never says that people may stand
// beside it, for which see [Sheet.Beside]. Nor does it look at the guides' double
// thickness for what is parked up to a day, [Sheet.ParkedHours]: ask both.
type Flood struct {
	// Check compares the soonest time, in s from the day the load was set, with
	// the time that it is to stand.
	Check measure.Check

	Freeboard float64 // m, before the load and after the snow that may fall; NaN if not known
	Soonest   float64 // s from the setting, for the soft end of the ice; NaN if not known
	Latest    float64 // s likewise, for the stiff end; +Inf where the law does not reach it
	Governs   string  // what ends at the soonest time: the freeboard, the law, or the gauge
}

// Dates returns the first and the last day of the range, for the day on which
// the load was set. A day that is not known or not reached is the zero time.
func (f Flood) Dates(set time.Time) (soonest, latest time.Time) {
	at := func(seconds float64) time.Time {
		if !(seconds >= 0 && seconds <= 1e9) || set.IsZero() {
			return time.Time{}
		}
		return set.Add(time.Duration(seconds) * time.Second)
	}
	return at(f.Soonest), at(f.Latest)
}

// snowDensity is that of the snow on the ice in kg/m³.
func (s Sheet) snowDensity() float64 {
	if s.SnowDensity == 0 {
		return wetSnow
	}
	return s.SnowDensity
}

// freeboard returns the least freeboard of the sheet in m under further snow:
// by the clear ice and its snow, and by the level in every hole but those at
// the dock, which lie in its bowl.
func (s Sheet) freeboard(snow float64) float64 {
	least := math.Inf(1)
	for _, h := range s.Holes {
		f := (1-clearIce/freshWater)*h.Clear - s.snowDensity()/freshWater*h.Snow
		if h.spot() != AtDock {
			f = math.Min(f, h.Water)
		}
		if !(f >= least) { // NaN passes on
			least = f
		}
	}
	return least - s.snowDensity()/freshWater*snow
}

// Sag returns how deep the sheet lies under the load a time in s after it was
// set, in m at the deepest place: the stiff and the soft end of what the ice may
// be, by thin-plate theory and the law of [Creep]. The smallest effective thickness of
// all holes counts, and no growth. The
// error is for bad data, for a sheet not measured (measure.ErrUnknown), and
// measure.ErrRange past the strain that the law speaks of.
func (s Sheet) Sag(load Stand, seconds float64) (least, most float64, err error) {
	nan := math.NaN()
	v, err := s.survey()
	if err != nil {
		return nan, nan, err
	}
	if load, err = load.settled(); err != nil {
		return nan, nan, err
	}
	if err := rangeHeld.Check("time since it was set", seconds); err != nil {
		return nan, nan, err
	}
	if v.open {
		return nan, nan, v.reasons[0]
	}
	k, err := newSinking(v.thickness, load.Loads)
	if err != nil {
		return nan, nan, err
	}
	if end := load.Soft.reaches(k.peak); seconds > end {
		r := measure.Range{Kind: measure.Time, Lo: 0, Hi: end, Source: sinha}
		return nan, nan, r.Check("time since it was set", seconds)
	}
	if most, err = k.crept(load.Soft, seconds); err != nil {
		return nan, nan, err
	}
	least, _, err = k.relaxed(load.Stiff, seconds)
	return least, math.Max(least, most), err
}

// bowl returns how deep the sheet may lie for a load that stands there already, in m.
func (s Sheet) bowl(load Stand) float64 {
	if !(load.Since > 0) {
		return 0
	}
	_, sag, err := s.Sag(load, load.Since)
	if err != nil {
		return 0
	}
	return sag
}

// Flooding asks whether the load may stand until the end of its stay before
// water comes over the ice: the sag of the softest ice that it may be against
// the freeboard under all the snow that may fall. It ends as well where the
// ice is strained by 1e-3, past which neither law nor criterion speaks, and
// where the gauge points to zero sooner. There is no answer for a sheet that
// would get none under a crossing (see [Sheet.Crossing]), for loads outside the
// drilled pad, for a load that stands without a gauge read daily, to today, and where the
// gauge says that the water falls away under the ice. Growth of the ice is not counted. The criterion was read; the creep law
// is from memory; neither is a rule of a public body, and none exists for weeks.
func (s Sheet) Flooding(load Stand) (Flood, error) {
	name := "until water comes over the ice under what stands there"
	f := Flood{Freeboard: math.NaN(), Soonest: math.NaN(), Latest: math.NaN()}
	fail := func(err error) (Flood, error) {
		f.Check = measure.Refuse(name, err)
		return f, err
	}
	load, err := load.settled()
	if err != nil {
		return fail(err)
	}
	name = fmt.Sprintf("%s, %s for %s", name, measure.Mass.Format(load.mass(), measure.SI), inDays(load.Stay))
	v, err := s.survey()
	if err != nil {
		return fail(err)
	}
	f.Check = measure.Check{
		Name: name, Kind: measure.Time, AtLeast: true, Hazard: true, Rule: frederking,
		Value: math.NaN(), Limit: load.Stay, Rests: v.rests,
	}
	v.reasons = append(v.reasons, s.outside(load.Loads)...)
	v.reasons = append(v.reasons, load.unwatched(s.highest())...)
	v.low(s.bowl(load))
	if !v.open {
		if err := f.predict(s, v.thickness, load); err != nil {
			v.reasons = append(v.reasons, err)
		}
	}
	c := &f.Check
	c.Value = f.Soonest
	if short := c.Value < c.Limit; !short && len(v.reasons) > 0 {
		c.Err = v.reasons[0]
		decide(c.Rests)
	}
	c.Notes = append(append(s.notes(v, nil), f.notes()...), caveats()...)
	return f, nil
}

// predict fills in freeboard, times and what governs.
func (f *Flood) predict(s Sheet, thickness float64, load Stand) error {
	f.Freeboard = s.freeboard(load.Snow)
	if !(thickness > 0) {
		f.Soonest, f.Latest, f.Governs = 0, 0, "no ice that counts"
		return nil
	}
	if !(f.Freeboard > 0) {
		f.Soonest, f.Latest, f.Governs = 0, 0, "the freeboard: snow or water has used it up"
		return nil
	}
	k, err := newSinking(thickness, load.Loads)
	if err != nil {
		return err
	}
	if err := rangeStress.Check("tension under the load", k.peak); err != nil {
		return err
	}
	end := load.Soft.reaches(k.peak)
	f.Soonest, f.Governs = math.Min(end, horizon), "the horizon of half a year"
	if end < horizon {
		f.Governs = "the strain of 1e-3, past which the creep law says nothing"
	}
	flooded := func(t float64) bool {
		w, e := k.crept(load.Soft, t)
		if e != nil {
			err = e
		}
		return !(w < f.Freeboard)
	}
	const start = 60.0
	for t := start; ; t = math.Min(8*t, f.Soonest) {
		if t = math.Min(t, f.Soonest); flooded(t) {
			f.Soonest, f.Governs = t, "the freeboard"
			if t = first(flooded, math.Max(t/8, start), t); t < f.Soonest {
				f.Soonest = t
			}
			if f.Soonest <= start {
				f.Soonest = 0
			}
			break
		}
		if t >= f.Soonest {
			break
		}
	}
	if err != nil {
		return err
	}
	f.Latest = first(func(t float64) bool {
		w, stress, e := k.relaxed(load.Stiff, t)
		if e != nil {
			err = e
		}
		return !(w < f.Freeboard) || t > load.Stiff.reaches(stress)
	}, start, horizon)
	if _, stress, e := k.relaxed(load.Stiff, math.Min(f.Latest, horizon)); e == nil && f.Latest >= load.Stiff.reaches(stress)*(1-1e-6) {
		f.Latest = math.Inf(1) // the law ends before the water comes
	}
	if fall, e := load.Gauge.Fall(); e == nil && load.Since+fall.Early < f.Soonest {
		f.Soonest, f.Governs = load.Since+fall.Early, "the water read in the hole at the dock"
	}
	f.Latest = math.Max(f.Latest, f.Soonest)
	return err
}

// notes of a flood.
func (f Flood) notes() []string {
	var out []string
	if !math.IsNaN(f.Freeboard) {
		out = append(out, "freeboard before the load: "+measure.Length.Format(f.Freeboard, measure.SI))
	}
	if f.Governs != "" {
		latest := inDays(f.Latest)
		if math.IsInf(f.Latest, 1) {
			latest = "a time that the law does not reach"
		}
		out = append(out, "water over the ice, then frozen in: from "+inDays(f.Soonest)+" to "+latest+" after it was set; the soonest by "+f.Governs)
	}
	return append(out,
		"an estimate, no rule of a public body: none was found for weeks; ask an ice engineer",
		"creep law: "+sinha.String()+"; grain, temperature and modulus are bounds, the soft end counts",
		"read the water in a hole at the dock daily: falling toward zero means move it",
		"snow on the dock is a load, on the ice it uses up freeboard; keep the snow bank away from the load",
		"says nothing about people beside it",
	)
}

// inDays prints a time in days.
func inDays(seconds float64) string {
	if seconds < 1.5*measure.Day {
		return fmt.Sprintf("%.0f h", math.Floor(seconds/3600))
	}
	return fmt.Sprintf("%.0f days", math.Floor(seconds/measure.Day))
}
