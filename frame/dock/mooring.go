package dock

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// mooring returns the checks of lines, levels, hinge, ramp and hauling out.
func (d *Dock) mooring() []measure.Check {
	return slices.Concat(d.lines(), []measure.Check{d.afloatAtLow()}, []measure.Check{d.hinged()}, []measure.Check{d.ramped()}, d.hauled())
}

// lines follows every line to ground, and finds what levels and losses do.
func (d *Dock) lines() []measure.Check {
	h, rs, err := d.hold()
	told, calm := d.blow()
	var of *storm
	var s *moor.Survey
	var lost []moor.Survey
	if err == nil {
		of, err = d.surveyed(h)
	}
	if err == nil {
		s, lost = of.whole, of.lost
	}
	var out []measure.Check
	for _, part := range []struct{ name, check string }{
		{"fitting", "cleat on the dock"}, {"piece", "rope, chain and shackles"}, {"ground", "what it ends in"},
	} {
		for i := range max(1, len(d.plan.Mooring.Lines)) {
			name := "Lines: " + part.check
			if len(d.plan.Mooring.Lines) > 0 {
				l := &d.plan.Mooring.Lines[i]
				name = fmt.Sprintf("Line %d, %s: %s", i+1, lineName(l, i), part.check)
				if part.name == "ground" {
					name += ", " + called(l.To, "nobody knows what")
				}
			}
			if err != nil {
				out = append(out, measure.Refuse(name, err))
				continue
			}
			c := worstOf(s, i, part.name)
			c.Name, c.Notes = name, append([]string{c.Name}, c.Notes...)
			if i == 0 && part.name == "fitting" {
				c.Notes = append(c.Notes, fmt.Sprintf("the dock moves up to %s and turns up to %s in the storm",
					measure.Length.Format(s.Offset, d.system()), measure.Angle.Format(s.Turn, d.system())))
				c.Notes = slices.Concat(c.Notes, told, h.notes, s.Notes)
			}
			out = append(out, unless(c, calm))
		}
	}
	out = append(out, unless(d.oneLost(lost, err), calm))
	low, high := d.bands(h, err)
	out = append(out, low, high)
	for i := range out {
		out[i].Rests = append(rs.assumptions(), out[i].Rests...)
	}
	return out
}

// worstOf returns the worst check of one part of one line's path.
func worstOf(s *moor.Survey, line int, part string) measure.Check {
	var worst measure.Check
	found := false
	for _, c := range s.Checks {
		rest, ok := strings.CutPrefix(c.Name, s.Ties[line].Name+", ")
		if !ok || !(strings.HasPrefix(rest, part) || part == "piece" && strings.HasPrefix(rest, "link")) {
			continue
		}
		if lifted := len(c.Steps) > 0; found && lifted != (len(worst.Steps) > 0) && c.Verdict() == worst.Verdict() {
			if lifted { // it has no number to compare
				worst = c
			}
			continue
		}
		if !found || c.Verdict() < worst.Verdict() || c.Verdict() == worst.Verdict() && c.Value*worst.Limit > worst.Value*c.Limit {
			worst, found = c, true
		}
	}
	return worst
}

// oneLost counts the lines without which the rest does not hold.
func (d *Dock) oneLost(lost []moor.Survey, err error) measure.Check {
	c := measure.Check{Name: "Lines whose loss the others do not stand", Kind: measure.Count, Rule: srcLoss}
	if err != nil {
		c = measure.Refuse(c.Name, err)
		c.Value = math.NaN()
		return c
	}
	var unknown error
	for _, s := range lost {
		if s.Err != nil {
			c.Value++
			c.Notes = append(c.Notes, "without "+s.Lost+": "+measure.RestateError(s.Err, d.system()).Error())
			continue
		}
		verdict := measure.Holds
		for _, k := range s.Checks {
			switch v := k.Verdict(); {
			case v == measure.Short:
				verdict = v
				c.Notes = append(c.Notes, fmt.Sprintf("without %s: %s: %s", s.Lost, k.Name, k.Numbers(d.system())))
			case v == measure.NoAnswer && unknown == nil:
				unknown = k.Err
			}
		}
		if verdict == measure.Short {
			c.Value++
		}
		c.Notes = append(c.Notes, fmt.Sprintf("without %s it moves up to %s", s.Lost, measure.Length.Format(s.Offset, d.system())))
	}
	if c.Value == 0 {
		c.Err = unknown
	}
	return c
}

// bands checks that every line works at the lowest and at the highest level.
func (d *Dock) bands(h *hold, err error) (low, high measure.Check) {
	low = measure.Check{Name: "Lowest level to which every line is neither slack nor taut", Kind: measure.Length, Rule: srcTaut}
	high = measure.Check{Name: "Highest level to which every line is neither slack nor taut", Kind: measure.Length, AtLeast: true, Rule: srcTaut}
	var s *span
	if err == nil {
		s, err = d.spanned(h)
	}
	if err != nil {
		low, high = measure.Refuse(low.Name, err), measure.Refuse(high.Name, err)
		return low, high
	}
	low.Limit, high.Limit = h.levels[0], h.levels[2]
	low.Value, high.Value = math.Inf(-1), math.Inf(1)
	for _, b := range s.bands {
		low.Value, high.Value = max(low.Value, b.Low), min(high.Value, b.High)
		for _, end := range []struct {
			c     *measure.Check
			r     moor.Regime
			at    float64
			words string
		}{{&low, b.Below, b.Low, "below"}, {&high, b.Above, b.High, "above"}} {
			if end.r == moor.Slack || end.r == moor.Taut {
				end.c.Notes = append(end.c.Notes, fmt.Sprintf("%s: %v %s %s", b.Tie, end.r, end.words, measure.Length.Format(end.at, d.system())))
			}
		}
	}
	for k, c := range [2]*measure.Check{&low, &high} {
		if c.Value == s.looked[k] && c.Meets() {
			c.Notes = append(c.Notes, "every line works there, too; how they hang "+[2]string{"lower", "higher"}[k]+" is not known")
		}
	}
	if winter, err := h.Winter(h.levels[0], h.levels[2]); err == nil {
		for _, w := range winter {
			high.Notes = append(high.Notes, "before freeze-up: "+w)
		}
	}
	return low, high
}

// working returns between which levels each line works, and how far was looked: a foot
// beyond the plan's levels, and where every line still works there farther, up to 32 ft,
// until one ceases. A level that the dock finds no rest at is halfway back.
func (h *hold) working() (*span, error) {
	var out span
	works := func(r moor.Regime) bool { return r == moor.Touching || r == moor.Lifted }
	const most = 32 * measure.Foot
	good, next, bad := [2]float64{}, [2]float64{measure.Foot, measure.Foot}, [2]float64{most, most}
	for range 10 {
		wide := [2]float64{h.levels[0] - next[0], h.levels[2] + next[1]}
		more, err := h.Bands(wide[0], wide[1])
		switch {
		case err != nil && out.bands == nil:
			return nil, err
		case err != nil:
			bad = next
		default:
			out, good = span{more, wide}, next
		}
		ends := [2]bool{}
		for _, b := range out.bands {
			if b.Low > b.High {
				return &out, nil
			}
			ends[0], ends[1] = ends[0] || !works(b.Below), ends[1] || !works(b.Above)
		}
		for k := range next {
			switch next[k] = good[k]; {
			case ends[k]:
			case bad[k] < most:
				next[k] = (good[k] + bad[k]) / 2
			default:
				next[k] = min(2*good[k], most)
			}
		}
		if next == good {
			break
		}
	}
	return &out, nil
}

// afloatAtLow checks the depth at low water, in the trough of a wave, against the
// draft with everyone at the worst edge.
func (d *Dock) afloatAtLow() measure.Check {
	site := &d.plan.Site
	all, rs := d.settled(d.crowd())
	rs = dedupe(append(rs, on(site.Depth), on(site.LevelLow), on(site.WaveHeight)))
	c := measure.Check{Name: "Depth at low water in a wave's trough, against the draft", Kind: measure.Length, AtLeast: true, Value: math.NaN(), Limit: math.NaN(), Rule: srcBed, Rests: rs.assumptions()}
	if c.Err = rs.err(); c.Err != nil {
		return c
	}
	draft := 0.0
	for _, fl := range all {
		if c.Err = fl.err; c.Err != nil {
			return c
		}
		deepest, err := fl.state.Draft()
		if err != nil {
			c.Err = err
			return c
		}
		draft = max(draft, deepest)
	}
	c.Value, c.Limit = site.Depth.Value+site.LevelLow.Value-site.WaveHeight.Value/2, draft
	c.Notes = []string{"it grounds with the water at " + measure.Length.Format(draft-site.Depth.Value, d.system()) + " against the day of measuring, everyone at one edge"}
	return c
}

// without returns a check of something that the plan says is not there.
func without(name string, said plan.Name, kind measure.Kind) measure.Check {
	return measure.Check{Name: name, Kind: kind, Rule: srcNone, Rests: rests{on(said)}.assumptions(), Steps: []string{"the plan has none"}}
}

// hinged checks the pins between the dock and its neighbour, with all of the storm
// going through them.
func (d *Dock) hinged() measure.Check {
	const name = "Hinge: greatest force on a pin"
	m, site := &d.plan.Mooring, &d.plan.Site
	if m.HingedTo.Value == "nothing" {
		return without(name, m.HingedTo, measure.Force)
	}
	g := &m.Hinge
	base, rs, err := d.platform()
	rs = append(rs, on(m.HingedTo))
	if m.HingedTo.Value != "" {
		rs = append(rs, on(g.Edge), on(g.Pins), on(g.Width), on(g.Diameter), on(g.Plate), on(g.Height), on(g.Neighbour), on(g.Strength),
			on(site.LevelLow), on(site.LevelHigh))
		rs = append(rs, d.stormRests()...)
	}
	rs = dedupe(rs)
	if missing := rs.err(); missing != nil {
		err = missing
	}
	var c measure.Check
	if err == nil {
		c, err = d.pins(base)
	}
	if err != nil {
		c = measure.Refuse(name, err)
	}
	c.Name, c.Rests = name, append(rs.assumptions(), c.Rests...)
	return c
}

func (d *Dock) pins(base *float.Platform) (measure.Check, error) {
	m, site := &d.plan.Mooring, &d.plan.Site
	g := &m.Hinge
	h, err := d.storm(settle(base, loading{}))
	if err != nil {
		return measure.Check{}, err
	}
	fl, _ := d.worst(d.crowd())
	if fl.err != nil {
		return measure.Check{}, fl.err
	}
	hinge := moor.Hinge{
		Width: g.Width.Value, Pins: g.Pins.Value, Diameter: g.Diameter.Value, Plate: g.Plate.Value,
		Strength: moor.Gear{Name: "pin and bracket", Kind: "pin", Break: g.Strength.Value, Source: srcUser},
	}
	k := slices.Index([]string{ends[0], ends[1], sides[0], sides[1]}, g.Edge.Value)
	area, along, across, arm := d.waterplane(k >= 2)
	var worst moor.Joint
	at := 0.0
	storm := h.load(true)
	for _, level := range []float64{site.LevelLow.Value, 0, site.LevelHigh.Value} {
		dock, err := moor.Afloat(level, g.Height.Value, area, along, across, arm)
		if err != nil {
			return measure.Check{}, err
		}
		dock.Heel = fl.state.Tilt()
		neighbour := moor.Side{Height: g.Neighbour.Value}
		if m.HingedTo.Value == "float" { // stiff in itself, it rises with the water
			neighbour.Height += level
		}
		for i := range 16 {
			load, err := storm(2 * math.Pi * float64(i) / 16)
			if err != nil {
				return measure.Check{}, err
			}
			out := float64(2*(k%2) - 1)
			pull, slide, turn := load.X, load.Y, load.Turn-out*arm*load.Y
			if k >= 2 {
				pull, slide, turn = load.Y, load.X, load.Turn+out*arm*load.X
			}
			j, err := hinge.Tie(dock, neighbour, pull, slide, turn)
			if err != nil {
				return measure.Check{}, err
			}
			if j.Pin > worst.Pin {
				worst, at = j, level
			}
		}
	}
	c, err := hinge.Check(worst)
	told, calm := d.blow()
	c = unless(c, calm)
	c.Notes = append(c.Notes, told...)
	c.Notes = append(c.Notes,
		fmt.Sprintf("worst with the water at %s: the pin lines stand %s apart untied, and the hinge takes all of the storm, crests and the crowd's heel",
			measure.Length.Format(at, d.system()), measure.Length.Format(math.Abs(worst.Step), d.system())),
		"the neighbour and its own moorings must carry all of it on to ground")
	return c, err
}

// waterplane returns the most that the floats have, m², its second moments about the
// axes through its middle along a hinge and square to it, m⁴, and how far off the hinge
// is, m. The floats have less in the water: stiffer than they are, the pins take more.
func (d *Dock) waterplane(atSide bool) (area, along, across, arm float64) {
	for _, f := range d.floats {
		size := d.floatSize(f.set)
		area += size.long * size.breadth
	}
	far, wide := d.length, d.width
	if atSide {
		far, wide = wide, far
	}
	return area, area * far * far / 12, area * wide * wide / 12, far / 2
}

// ramped checks the ramp's slope over the levels.
func (d *Dock) ramped() measure.Check {
	const name = "Ramp: steepest slope over the levels"
	m, site := &d.plan.Mooring, &d.plan.Site
	if m.HasRamp.Value == "no" {
		return without(name, m.HasRamp, measure.Ratio)
	}
	base, rs, err := d.platform()
	rs = append(rs, on(m.HasRamp))
	if m.HasRamp.Value == "yes" {
		rs = append(rs, on(m.Ramp.Length), on(m.Ramp.Mass), on(m.Ramp.Shore), on(m.Ramp.Limit), on(site.LevelLow), on(site.LevelHigh))
	}
	rs = dedupe(rs)
	if missing := rs.err(); missing != nil {
		err = missing
	}
	c := measure.Refuse(name, err)
	if err == nil {
		if fl := settle(base, loading{}); fl.err != nil {
			c.Err = fl.err
		} else {
			r := moor.Ramp{Length: m.Ramp.Length.Value, Width: 36 * measure.Inch, Mass: m.Ramp.Mass.Value, Shore: m.Ramp.Shore.Value, Deck: fl.edge, Limit: m.Ramp.Limit.Value}
			if c, err = r.Check(site.LevelLow.Value, site.LevelHigh.Value); err != nil {
				c = measure.Refuse(name, err)
			} else if load, err := r.Reaction(25*measure.PSF, 0); err == nil {
				c.Notes = append(c.Notes, "a 36 in wide ramp with 25 psf on it lays "+measure.Force.Format(load, d.system())+" on the dock")
			}
		}
	}
	c.Name, c.Rests = name, append(rs.assumptions(), c.Rests...)
	return c
}
