package dock

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strings"
	"time"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// survey turns the plan's survey into the sheet that package ice judges. What the
// plan does not know stays at the cautious zero value.
func (d *Dock) survey() ice.Sheet {
	p := &d.plan.Ice
	s := ice.Sheet{
		Water:   map[string]ice.Water{"lake": ice.Lake, "river": ice.River, "sea": ice.Sea}[d.plan.Site.Water.Value],
		Season:  map[string]ice.Season{"winter": ice.Winter, "spring": ice.Spring}[p.Season.Value],
		Cracks:  map[string]ice.Cracks{"none": ice.NoCracks, "one": ice.OneCrack, "crossing": ice.CrossingCracks}[p.Cracks.Value],
		Wet:     finding(p.Wet),
		Inlets:  finding(p.Inlets),
		Changed: finding(p.Changed),
		Depth:   d.plan.Site.Depth.Value,
	}
	now, known := plan.Time(p.Now)
	s.Now = now
	oldest := minute // the hour is told no finer
	for _, h := range p.Holes {
		clear := h.Clear.Value
		if h.Gap.Value > 0 { // the thickest layer alone counts; see layers
			clear = h.Layer.Value
		}
		s.Holes = append(s.Holes, ice.Hole{
			Name: h.Where.Value, Clear: clear, White: h.White.Value, Gap: h.Gap.Value,
			Water: h.Water.Value, Snow: h.Snow.Value, Hard: h.Hard.Value == "yes",
			X: h.Along.Value - d.length/2, Y: h.Across.Value - d.width/2,
			Looked: true, // what the plan does not know is NaN
		})
		when, ok := plan.Time(h.When)
		known = known && ok && !when.After(now) // a hole of tomorrow is a slip of the pen
		oldest = max(oldest, now.Sub(when).Seconds())
	}
	if known && len(p.Holes) > 0 {
		s.Age = oldest
	}
	for _, w := range p.Weather {
		day, _ := plan.Time(w.Date)
		s.Air = append(s.Air, ice.Air{Date: day, High: w.High.Value, Low: w.Low.Value})
	}
	if o := d.outline(); !math.IsNaN(o.X + o.Y + o.A + o.B) {
		s.Outline = []ice.Patch{o}
	}
	return s
}

const minute = 60.0

// outline is the rectangle round the frame and its floats: what the corners of the
// pad must surround.
func (d *Dock) outline() ice.Patch {
	low, high := [2]float64{-d.length / 2, -d.width / 2}, [2]float64{d.length / 2, d.width / 2}
	if under := d.under(); !math.IsNaN(under.X + under.Y + under.A + under.B) {
		for k, side := range [2][2]float64{{under.X, under.A}, {under.Y, under.B}} {
			low[k], high[k] = min(low[k], side[0]-side[1]/2), max(high[k], side[0]+side[1]/2)
		}
	}
	return rectangle(low, high)
}

func rectangle(low, high [2]float64) ice.Patch {
	return ice.Patch{X: (low[0] + high[0]) / 2, Y: (low[1] + high[1]) / 2, A: high[0] - low[0], B: high[1] - low[1]}
}

// where are the places of the holes in the plan.
func (d *Dock) where() rests {
	var out rests
	for i := range d.plan.Ice.Holes {
		h := &d.plan.Ice.Holes[i]
		out = append(out, on(h.Along), on(h.Across))
	}
	return out
}

func finding(n plan.Name) ice.Finding {
	return map[string]ice.Finding{"yes": ice.Found, "no": ice.NotFound}[n.Value]
}

// onIce returns the checks of the ice: a crossing, hours of parking by the
// guides' own rule, and the time the plan wants, which nothing here answers.
func (d *Dock) onIce() []measure.Check {
	s, crew := d.survey(), d.crew()
	out := []measure.Check{}
	rs := d.crewRests()
	if err := rs.err(); err != nil {
		out = append(out, refuse(iceCrossing, err, rs))
	} else {
		c, err := s.Crossing(crew)
		out = append(out, d.iceCheck(iceCrossing, c, err, append(rs, d.where()...)))
	}

	base, drs, err := d.platform()
	if drs = append(drs, d.crewRests()...); err == nil {
		err = drs.err()
	}
	if err != nil {
		out = append(out, refuse(iceHours, err, drs))
	} else {
		crew.Mass += d.weight(floating{base: base}).Value
		c, err := s.ParkedHours(crew, dayLong)
		c = d.iceCheck(iceHours, c, err, append(drs, d.where()...))
		c.Notes = append([]string{fmt.Sprintf("for %s: the dock and the crossing load beside it, without snow, up to %d h", measure.Mass.Format(crew.Mass, d.system()), dayLong)}, c.Notes...)
		out = append(out, c)
	}

	return append(out, d.parked(s)...)
}

// crewRests are mass and people of the plan's crossing.
func (d *Dock) crewRests() rests {
	return rests{on(d.plan.Ice.Cross.Mass), on(d.plan.Ice.Cross.People)}
}

// parked returns the checks of the dock that stands on the ice for days and weeks:
// whether it may stay, and whether people may be beside it today.
func (d *Dock) parked(s ice.Sheet) []measure.Check {
	p := &d.plan.Ice
	stay := "Ice under the finished dock that stands there for days or weeks"
	if plan.Has(p.Park) {
		stay += ": " + d.days(p.Park.Value)
		if p.Since.Value > 0 {
			stay += fmt.Sprintf(" more, %s in all", d.days(p.Since.Value+p.Park.Value))
		}
	}
	_, rs, err := d.platform()
	rs = dedupe(append(append(rs, on(p.Park), on(p.Snow), on(p.Since)), d.where()...))
	if err == nil {
		err = rs.err()
	}
	if err != nil {
		return []measure.Check{refuse(stay, err, rs), refuse(iceBeside, err, rs)}
	}
	load := d.standingLoad()
	f, err := s.Flooding(load)
	c := d.iceCheck(stay, f.Check, err, rs)
	if now, known := plan.Time(p.Now); known && err == nil && !math.IsNaN(f.Soonest) {
		soonest, latest := f.Dates(now.Add(-time.Duration(load.Since) * time.Second))
		c.Notes = append(c.Notes, d.flooded(f, soonest, latest, now)+"; "+f.Governs)
	}
	out := []measure.Check{c}
	rs = append(rs, d.crewRests()...)
	if err := rs.err(); err != nil {
		return append(out, refuse(iceBeside, err, rs))
	}
	crew := d.crew()
	c, err = s.Beside(load, crew)
	c = d.iceCheck(iceBeside, c, err, rs)
	if err == nil {
		c.Notes = append([]string{d.besideWhat(load, crew)}, c.Notes...)
	}
	return append(out, c)
}

// besideWhat says what counts as one load where people are beside the dock.
func (d *Dock) besideWhat(load ice.Stand, crew ice.Crossing) string {
	bare, all := d.weighs()/measure.Gravity, load.Loads[0].Force/measure.Gravity
	mass := func(x float64) string { return measure.Mass.Format(x, d.system()) }
	text := fmt.Sprintf("for %s as one load (of a table the row of the next heavier one counts): the dock, %s", mass(all+onFoot(crew)), mass(bare))
	if all > bare {
		text += fmt.Sprintf(", %s of snow to come on it, %s", measure.Length.Format(load.Snow, d.system()), mass(all-bare))
	}
	text += ", and the crossing load beside it, " + mass(onFoot(crew))
	if onFoot(crew) > crew.Mass {
		text += fmt.Sprintf(" (each of %d people counts %s and more)", crew.People, mass(head))
	}
	return text
}

// head is the least that package ice counts a person as, kg.
const head = 100.0

// onFoot is what a load that crosses counts as, kg.
func onFoot(c ice.Crossing) float64 { return math.Max(c.Mass, head*float64(c.People)) }

// flooded says between which days water is to be expected over the ice: no date past four
// months from now, where the ice itself is not.
func (d *Dock) flooded(f ice.Flood, soonest, latest, now time.Time) string {
	past := func(t time.Time) bool { return t.IsZero() || t.After(now.AddDate(0, 4, 0)) }
	switch {
	case past(soonest):
		return "water over the ice not before " + d.days(f.Soonest) + " after it was set, which is more than four months from now"
	case past(latest):
		return "water over the ice from " + soonest.Format(time.DateOnly) + " at the soonest, at the latest past four months from now, or never"
	}
	return "water over the ice between " + soonest.Format(time.DateOnly) + " and " + latest.Format(time.DateOnly)
}

// packed is the density of snow that has settled, kg/m³: what package ice counts
// snow as that was not weighed.
const packed = 400.0

// standingLoad returns the dock with the snow that may fall on it, spread over the
// outline of its floats: they stand nearer to each other than a quarter of the
// sheet's characteristic length, so that the sheet does not tell them apart.
func (d *Dock) standingLoad() ice.Stand {
	p := &d.plan.Ice
	out := ice.Stand{Since: p.Since.Value, Snow: p.Snow.Value}
	if p.Since.Known == measure.Unknown { // it may stand there for weeks
		out.Since = math.NaN()
	}
	out.Stay = p.Since.Value + p.Park.Value // the plan counts from now, a stand from its first day
	patch := d.under()
	patch.Force = d.weighs() + p.Snow.Value*packed*measure.Gravity*d.length*d.width
	out.Loads = []ice.Patch{patch}
	now, known := plan.Time(p.Now)
	for _, g := range p.Gauge {
		if when, ok := plan.Time(g.When); ok && known {
			out.Gauge = append(out.Gauge, ice.Reading{Age: now.Sub(when).Seconds(), Freeboard: g.Water.Value})
		}
	}
	return out
}

// under is the outline of the floats.
func (d *Dock) under() ice.Patch {
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, m := range d.floats {
		size := d.floatSize(m.set)
		half := [2]float64{size.long / 2, size.breadth / 2}
		if m.set.Lies.Value == "across" {
			half[0], half[1] = half[1], half[0]
		}
		for k, at := range [2]float64{m.x, m.y} {
			low[k], high[k] = min(low[k], at-half[k]), max(high[k], at+half[k])
		}
	}
	return rectangle(low, high)
}

func (d *Dock) days(seconds float64) string {
	return fmt.Sprintf("%.4g days", seconds/measure.Day)
}

// iceCheck names a check of package ice and adds what the plan assumed.
func (d *Dock) iceCheck(name string, c measure.Check, err error, rs rests) measure.Check {
	if err != nil {
		return refuse(name, planError(err), rs)
	}
	c.Name, c.Hazard, c.Err = name, true, planError(c.Err)
	for i, n := range c.Notes {
		c.Notes[i] = inPlan(n)
	}
	c.Rests = append(rs.assumptions(), c.Rests...)
	return c
}

// refuse returns a check without an answer that still says what it would rest on.
func refuse(name string, why error, rs rests) measure.Check {
	c := measure.Refuse(name, why)
	c.Rests = dedupe(rs).assumptions()
	return c
}

// planError names the plan's own fields in an error of package ice.
func planError(err error) error {
	var e *measure.Error
	if !errors.As(err, &e) {
		return err
	}
	told := *e
	if e.Field == "time that it is to stand" {
		told.Want = fmt.Sprintf("ice.since and ice.parked together, with no more than %.4g days", e.Range.Hi/measure.Day)
	}
	told.Field, told.Why, told.Want = inPlan(e.Field), inPlan(e.Why), inPlan(told.Want)
	if e.Class == measure.ErrUnknown && (e.Field == "air" || e.Field == "now") {
		told.Field = map[string]string{"air": "ice.weather", "now": "ice.now"}[e.Field]
	}
	if f, ok := map[string]string{"time that it is to stand": "ice.parked", "time that it has stood": "ice.since"}[e.Field]; ok {
		told.Field = f
	}
	return &told
}

// planned are the words of package ice for what the plan has a field of.
var planned = []struct {
	words *regexp.Regexp
	field string
}{
	{regexp.MustCompile(`\bair, day (\d+) of \d+, (date|high|low)\b`), "ice.weather[$1].$2"},
	{regexp.MustCompile(`\bair: not known`), "ice.weather: not known"},
	{regexp.MustCompile(`\bnow: not known`), "ice.now: not known"},
	{regexp.MustCompile(`\bhole (\d+) \(.*\), place\b`), "ice.holes[$1].along and across"},
	{regexp.MustCompile(`\bload 1 stands outside`), "the dock stands outside"},
	{regexp.MustCompile(`\bin the axes of the load\b`), "in the plan, along and across the dock"},
}

// inPlan says in the plan's own words what package ice says of a sheet.
func inPlan(text string) string {
	if !strings.Contains(text, "air") && !strings.Contains(text, "now: ") && !strings.Contains(text, "hole") && !strings.Contains(text, "load") {
		return text
	}
	for _, p := range planned {
		text = p.words.ReplaceAllString(text, p.field)
	}
	return text
}
