package dock

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/float"
	"example.org/floewright/frame/layout"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// kind returns what a kind of float is called, each differently.
func (d *Dock) kind(i int) string {
	name := called(d.plan.Floats[i].Name, "float")
	for k := range d.plan.Floats {
		if k != i && called(d.plan.Floats[k].Name, "float") == name {
			return fmt.Sprintf("%s, entry %d", name, i+1)
		}
	}
	return name
}

// meant reports whether an entry is for a kind of float.
func meant(floats, kind plan.Name) bool {
	return floats.Known != measure.Unknown && (floats.Value == "all" || floats.Value == kind.Value)
}

// tieOf and drumOf return the plan's entry for a kind of float, nil if there is none.
func (d *Dock) tieOf(i int) *plan.Tie {
	for k := range d.plan.Hardware.Ties {
		if t := &d.plan.Hardware.Ties[k]; meant(t.Floats, d.plan.Floats[i].Name) {
			return t
		}
	}
	return nil
}

func (d *Dock) drumOf(i int) *plan.Drum {
	for k := range d.plan.Hardware.Drums {
		if t := &d.plan.Hardware.Drums[k]; meant(t.Floats, d.plan.Floats[i].Name) {
			return t
		}
	}
	return nil
}

func noTie(set *plan.Floats) error {
	return &measure.Error{Field: "hardware.ties", Class: measure.ErrUnknown, Want: "an entry for " + called(set.Name, "the float")}
}

// ties returns the checks of what holds the floats, of the boards' screws over them,
// and of the drums themselves.
func (d *Dock) ties() []measure.Check {
	var out []measure.Check
	for i := range d.plan.Floats {
		out = append(out, d.tied(i)...)
	}
	out = append(out, d.screwsOver())
	for i := range d.plan.Floats {
		out = append(out, d.stopped(i))
	}
	for i := range d.plan.Floats {
		out = append(out, d.duty(i)...)
	}
	return out
}

// tied checks the tie of a kind of float: against its float dropping out, and against
// what the frame lifts or the lake leaves hanging.
func (d *Dock) tied(i int) []measure.Check {
	set, name := &d.plan.Floats[i], d.kind(i)
	names := [4]string{
		"Tie of " + name + ", the float dropping", "What that tie is made to, the float dropping: " + name,
		"Tie of " + name + ", the most that hangs on it", "What that tie is made to, the most that hangs: " + name,
	}
	coat := "Coating of the tie of " + name
	rs := dedupe(append(append(d.frameRests(), d.layoutRests()...), on(set.Tied)))
	tie := d.tieOf(i)
	var err error
	switch {
	case set.Tied.Value != "yes":
		err = &measure.Error{Field: set.Tied.Path, Text: set.Tied.Value, Class: measure.ErrUnknown, Want: "a tie, or what else keeps it from dropping out and wandering, by somebody who answers for it"}
	case tie == nil:
		err = noTie(set)
	default:
		rs = append(rs, on(tie.Floats), on(tie.Of), on(tie.Strength), on(tie.Efficiency), on(tie.Parts), on(tie.Rounded), on(tie.Slack), on(tie.Drag))
		if tie.Slack.Value > 0 {
			rs = append(rs, on(tie.Stiffness))
		}
		if duty := d.drumOf(i); duty != nil {
			rs = append(rs, on(duty.Floats), on(duty.Watched))
			if duty.Watched.Value == "yes" {
				rs = append(rs, on(duty.Leak))
			}
		}
	}
	if err == nil {
		err = rs.err()
	}
	var made [4]measure.Check
	if err == nil {
		made, err = d.pulled(i, tie)
	}
	out := make([]measure.Check, 0, 5)
	for k, n := range names {
		if err != nil {
			out = append(out, refuse(n, err, rs))
			continue
		}
		c := made[k]
		c.Name, c.Rests = n, rs.assumptions()
		out = append(out, c)
	}
	metal := measure.Check{Name: coat, Kind: measure.Count, Rule: srcAsked, Steps: []string{"no metal in it"}}
	switch {
	case tie == nil || tie.Of.Value == "" || set.Tied.Value != "yes":
		metal = refuse(coat, &measure.Error{Field: "hardware.ties", Class: measure.ErrUnknown, Want: "what the tie is made of"}, rests{on(set.Tied)})
	case tie.Of.Value == "chain" || tie.Of.Value == "wire rope":
		metal = d.coating(coat, tie.Finish, fasten.Metal{Connector: true})
	}
	return append(out, metal)
}

// pulled returns the four checks of a tie whose inputs are known.
func (d *Dock) pulled(i int, given *plan.Tie) (out [4]measure.Check, err error) {
	set := &d.plan.Floats[i]
	tie := fasten.Tie{
		Strength: given.Strength.Value, Efficiency: given.Efficiency.Value, Parts: given.Parts.Value, Rounded: given.Rounded.Value == "yes",
		Point: known(given.Point), Stiffness: known(given.Stiffness), Slack: given.Slack.Value,
	}
	e, err := d.tried()
	if err != nil {
		return out, err
	}
	l, err := d.laid()
	if err != nil {
		return out, err
	}
	var hangs Extreme
	drum := fasten.Drum{Mass: set.Mass.Value, Drag: given.Drag.Value, Above: true}
	if duty := d.drumOf(i); duty != nil && duty.Watched.Value == "yes" {
		drum.Watched, drum.Leak = true, duty.Leak.Value
	}
	for k, m := range d.floats {
		if m.set != set {
			continue
		}
		drum.Push = math.Max(drum.Push, waterHeavy*measure.Gravity*d.floatVolume(k))
		drum.Above = drum.Above && l.Bearings[k].Seat != layout.Nothing
		hangs.take(e.Bearings[k].Hangs.Value, 0, e.Bearings[k].Hangs.Situation)
	}
	checks, err := tie.Check(drum)
	if err != nil {
		return out, err
	}
	copy(out[:2], checks)
	out[2], out[3] = out[0], out[1]
	force, note := hangs.Value+drum.Drag, e.Situations[hangs.Situation].Name
	if held := drum.Push - drum.Mass*measure.Gravity + drum.Drag; !drum.Above && held > force {
		force, note = held, "nothing lies above it: its full push"
	}
	for k := 2; k < 4; k++ {
		out[k].Value, out[k].Notes = force, []string{note + "; the drag added"}
	}
	return out, nil
}

// deckJoint is one board on one joist, its screws pulled by a float below.
func (d *Dock) deckJoint(f fasten.Fastener) fasten.Joint {
	return fasten.Joint{
		Fastener: f, PerRow: max(1, d.plan.Frame.Decking.Screws.Value), Service: fasten.Service{Temperature: 20},
		Main: fasten.Piece{Thickness: d.joist.section.Depth, Width: d.joist.section.Width, Grade: d.joist.grade, Smooth: d.joist.smooth()},
		Side: fasten.Piece{Thickness: d.board.section.Width, Width: d.board.section.Depth, Grade: d.board.grade, Smooth: d.board.smooth()},
	}
}

// screwsOver checks the boards' screws over floats that bear on boards, all on.
func (d *Dock) screwsOver() measure.Check {
	const name = "Screws of a board over a float, pulled"
	f := &d.plan.Frame.Decking
	rs := dedupe(append(d.frameRests(), d.layoutRests()...))
	e, err := d.tried()
	if missing := rs.err(); missing != nil {
		err = missing
	}
	if err != nil {
		return refuse(name, err, rs)
	}
	worst := measure.Check{Name: name, Kind: measure.Force, Rule: srcAsked, Steps: []string{"no float bears on boards"}, Rests: rs.assumptions()}
	for i := range e.Bearings {
		b := &e.Bearings[i]
		if !(b.Screw > 0 && b.Push.Value > 0) {
			continue
		}
		rs := append(rs, on(f.Screw), on(f.Screws), on(f.Grade))
		screw, err := d.looked(rs, f.Screw)
		if err != nil {
			return refuse(name, err, rs)
		}
		for t, x := range b.lasts {
			if x.Value == 0 {
				continue
			}
			pulls, err := d.deckJoint(screw).Pull(lumber.Duration(t))
			if err != nil {
				return refuse(name, err, rs)
			}
			for _, p := range pulls {
				c := measure.Check{Name: name, Kind: measure.Force, Value: b.Screw * x.Value / b.Push.Value, Limit: p.Value, Factors: p.Factors, Rule: p.Rule, Err: p.Err}
				c.Notes = []string{p.Name + ", " + b.Name + ": " + e.Situations[x.Situation].Name}
				c.Rests = rs.assumptions()
				if worst.Value == 0 || graver(c, worst) {
					worst = c
				}
			}
		}
	}
	return worst
}

// residue is the caution that goes with every drum whose past is not known.
const residue = "no drilling, cutting or welding of a drum with an unknown residue"

// harmful is the caution that goes with a drum that is known to have held what harms.
const harmful = "no rinsing, opening, drilling, cutting or welding of it"

var (
	srcDrum = &measure.Source{Title: "What a drum held is known, it is tight, and its bungs are where nothing drips or draws", Status: measure.CommonPractice}
	srcSeal = &measure.Source{Title: "What the drum bears, as the plan has it", Locator: "ideal gas in a rigid drum, damp air", Status: measure.OwnChoice}
)

// duty checks what is known of a kind of drum; a block has none of it.
func (d *Dock) duty(i int) []measure.Check {
	set, name := &d.plan.Floats[i], d.kind(i)
	names := [5]string{
		"What was in it before: " + name, "Leak test: " + name, "Bungs in the ends, level at the sides: " + name,
		"Suction in the closed drum at its coldest: " + name, "Pressure in the closed drum at its hottest: " + name,
	}
	out := make([]measure.Check, 5)
	duty := d.drumOf(i)
	for k, n := range names {
		c := measure.Check{Name: n, Kind: measure.Count, Rule: srcDrum, Limit: 1, AtLeast: true}
		if k < len(dutySteps) {
			c.Steps = slices.Clone(dutySteps[k])
		}
		rs := rests{on(set.Shape)}
		switch {
		case rs.err() != nil:
			c = refuse(n, rs.err(), rs)
		case set.Shape.Value == "block":
			c = measure.Check{Name: n, Kind: measure.Count, Rule: srcDrum, Steps: []string{"a block has neither residue nor bungs"}, Rests: rs.assumptions()}
		case duty == nil:
			c = refuse(n, &measure.Error{Field: "hardware.drums", Class: measure.ErrUnknown, Want: "an entry for " + name}, rs)
		case k < 3:
			d.answered(&c, k, duty, rs)
		default:
			d.sealed(&c, k == 3, set, duty, rs)
		}
		if k == 0 && set.Shape.Value != "block" && c.Verdict() != measure.Holds {
			if c.Verdict() == measure.Short { // it is known, and harms
				c.Notes = append(c.Notes, harmful)
			} else {
				c.Notes = append(c.Notes, residue)
			}
		}
		out[k] = c
	}
	return out
}

// dutySteps name the answers to the questions that are answered one way or the other.
var dutySteps = [3][]string{{"not harmless", "harmless"}, {"no", "yes"}, {"elsewhere", "level at the sides"}}

// answered fills in one of the three checks that are yes or no.
func (d *Dock) answered(c *measure.Check, k int, duty *plan.Drum, rs rests) {
	of := [3]plan.Name{duty.Held, duty.LeakTested, duty.Bungs}[k]
	rs = append(rs, on(duty.Floats), on(of))
	c.Rests = rs.assumptions()
	if err := rs.err(); err != nil {
		*c = refuse(c.Name, err, rs)
		return
	}
	good := of.Value == "yes" || of.Value == "level at the sides"
	if k == 0 {
		good = of.Value == "nothing" || of.Value == "food" || of.Value == "soap"
		if !good {
			c.Notes = append(c.Notes, "only a licensed reconditioner cleans such a drum; ask before it meets the lake")
		}
	}
	if good {
		c.Value = 1
	}
	if k == 0 || c.Value == 0 {
		c.Notes = append(c.Notes, of.Value)
	}
}

// sealed fills in what the air shut in comes to.
func (d *Dock) sealed(c *measure.Check, cold bool, set *plan.Floats, duty *plan.Drum, rs rests) {
	at, bears := duty.Hottest, duty.Blown
	if cold {
		at, bears = duty.Coldest, duty.Suction
	}
	rs = append(rs, on(duty.Floats), on(duty.Closed), on(at))
	c.Kind, c.Rule, c.AtLeast, c.Limit = measure.Pressure, srcSeal, false, bears.Value
	c.Rests = append(rs, on(bears)).assumptions()
	err := rs.err()
	if err == nil {
		err = d.swings(duty)
	}
	if err != nil {
		rs = append(rs, on(bears))
		*c = refuse(c.Name, err, rs)
		return
	}
	degrees := at.Value
	if cold {
		degrees = math.Min(degrees, d.frost())
	}
	seal := float.Seal{Celsius: duty.Closed.Value}
	if c.Value, c.Err = seal.Squeeze(degrees, 0, waterHeavy); c.Err != nil {
		return
	}
	if cold {
		// Pressed under in water at freezing it is squeezed by the water, too.
		under, err := seal.Squeeze(0, d.floatSize(set).height, waterHeavy)
		if err == nil {
			c.Value = math.Max(c.Value, under)
		}
		c.Notes = append(c.Notes, "a soft drum gives way instead and loses up to that share of its volume")
	} else {
		c.Value = -c.Value
	}
	c.Value = math.Max(0, c.Value)
	c.Err = rests{on(bears)}.err()
}

// swings refuses temperatures of a drum that contradict each other or the plan's weather,
// in which it stood: the coldest over the hottest, over the temperature at which it was
// closed, or over a low of these days.
func (d *Dock) swings(duty *plan.Drum) error {
	most, why := duty.Hottest.Value, "the hottest"
	if plan.Has(duty.Closed) && duty.Closed.Value < most {
		most, why = duty.Closed.Value, "at which they were closed"
	}
	if low := d.frost(); low < most {
		most, why = low, "the lowest of ice.weather"
	}
	told := func(x float64) string { return measure.Temperature.Format(x, d.system()) }
	if plan.Has(duty.Coldest) && duty.Coldest.Known == measure.Measured && duty.Coldest.Value > most+1e-9 {
		return &measure.Error{Field: duty.Coldest.Path, Text: duty.Coldest.Text, Class: measure.ErrRange, Want: "at most " + told(most) + ", " + why}
	}
	if plan.Has(duty.Closed) && plan.Has(duty.Hottest) && duty.Hottest.Known == measure.Measured && duty.Hottest.Value < duty.Closed.Value-1e-9 {
		return &measure.Error{Field: duty.Hottest.Path, Text: duty.Hottest.Text, Class: measure.ErrRange, Want: "at least " + told(duty.Closed.Value) + ", at which they were closed"}
	}
	return nil
}

// frost is the lowest temperature of the plan's weather, +Inf where it has none.
func (d *Dock) frost() float64 {
	low := math.Inf(1)
	for i := range d.plan.Ice.Weather {
		if at := d.plan.Ice.Weather[i].Low; plan.Has(at) {
			low = math.Min(low, at.Value)
		}
	}
	return low
}
