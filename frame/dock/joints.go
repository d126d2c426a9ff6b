package dock

import (
	"math"
	"strconv"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// A way is how a joist's end is loaded against its rim.
type way int

const (
	carried way = iota
	heldDown
	toAndFro // a force that turns about between the crest and the trough of the same waves
	pulledOff
	slid
	ways
)

var wayNames = [ways]string{
	"Joist's end carried by its rim", "Joist's end held down by its rim", "Joist's end to and fro in waves",
	"Joist pulled off its rim", "Joist's end slid along its rim",
}

// byDuration is the most of a force in the situations of each duration: wood and
// fasteners take less of what lasts, so that the largest force need not govern.
type byDuration [lumber.TenMinutes + 1]Extreme

// take keeps a force at a joist's end.
func (j *Joint) take(e *Envelope, w way, force, at float64, situation int) {
	j.lasts[w][e.Situations[situation].Duration].take(force, at, situation)
}

// holding returns the situations that may govern joints and ties: for each way the
// largest force, and the largest for its duration.
func (e *Envelope) holding() []int {
	var out []int
	for w := range ways {
		var most, lasting Extreme
		for i := range e.Joints {
			for t, x := range e.Joints[i].lasts[w] {
				cd, err := lumber.Duration(t).Factor(lumber.Fv)
				if err != nil {
					continue
				}
				most.take(x.Value, 0, x.Situation)
				lasting.take(x.Value/cd.Value, 0, x.Situation)
			}
		}
		out = append(out, most.Situation, lasting.Situation)
	}
	var hangs, push Extreme
	for _, b := range e.Bearings {
		hangs.take(b.Hangs.Value, 0, b.Hangs.Situation)
		push.take(b.Push.Value, 0, b.Push.Situation)
	}
	return append(out, hangs.Situation, push.Situation)
}

// fastened returns the checks of the joists' ends over all that the dock meets, and
// of the metal.
func (d *Dock) fastened() []measure.Check {
	l, h := &d.plan.Loads, &d.plan.Hardware.Ends
	rs := append(d.frameRests(), on(l.Cleat), on(l.Bump), on(l.Skid))
	rs = dedupe(append(rs, endRests(h)...))
	e, err := d.tried()
	if missing := rs.err(); missing != nil {
		err = missing // those of the ends among them
	}
	var f fasten.Fastener
	if err == nil {
		f, err = fasten.Lookup(h.Fastener.Value)
	}
	var out []measure.Check
	for w := range ways {
		with := rs
		if figure, asks := makerOf(h, w); asks { // of an angle, in one direction alone
			with = append(append(rests(nil), rs...), on(figure), printedFor(h.For))
		}
		why := err
		if why == nil {
			why = with.err()
		}
		if why != nil {
			out = append(out, refuse(wayNames[w], why, with))
			continue
		}
		out = append(out, d.worstEnd(e, w, f, with))
	}
	return append(out, d.metal()...)
}

// endRests is what the joists' ends rest on, by how they are held.
func endRests(h *plan.JoistEnds) rests {
	rs := rests{on(h.By), on(h.Fastener), on(h.Count)}
	switch h.By.Value {
	case "nails", "screws":
		rs = append(rs, on(h.Edge))
		if h.Count.Value > 1 {
			rs = append(rs, on(h.Spacing))
		}
	case "hanger":
		rs = append(rs, on(h.InJoist), on(h.Steel), on(h.Down), on(h.Up), on(h.Lateral), on(h.Along), on(h.ToAndFro), printedFor(h.For), on(h.Listed))
	case "angle":
		rs = append(rs, on(h.InJoist), on(h.Steel), on(h.Edge), on(h.End))
		if h.Count.Value > 1 || h.InJoist.Value > 1 {
			rs = append(rs, on(h.Spacing))
		}
	}
	return rs
}

// makerOf returns the maker's figure that bounds an angle loaded one way: its own bending,
// along the joist or along the rim; its bolts are reckoned.
func makerOf(h *plan.JoistEnds, w way) (plan.Quantity, bool) {
	switch {
	case h.By.Value != "angle":
	case w == pulledOff:
		return h.Along, true
	case w == slid:
		return h.Lateral, true
	}
	return plan.Quantity{}, false
}

// printedFor is the duration factor of the maker's figures, with the duration's name.
func printedFor(n plan.Name) rest {
	r := on(n)
	for t := lumber.Permanent; t <= lumber.TenMinutes; t++ {
		if f, err := t.Factor(lumber.Fb); err == nil && n.Value == strconv.FormatFloat(f.Value, 'g', -1, 64) {
			r.text = n.Text + ", " + t.String()
		}
	}
	return r
}

// worstEnd checks one way over all joints and durations and keeps the worst.
func (d *Dock) worstEnd(e *Envelope, w way, f fasten.Fastener, rs rests) measure.Check {
	worst := measure.Check{Name: wayNames[w], Kind: measure.Force, Rule: srcAsked, Rests: rs.assumptions(), Steps: []string{"nothing that the dock meets asks it"}}
	asked := false
	for t := range (byDuration{}) {
		var most Extreme
		name := ""
		for i := range e.Joints {
			if x := e.Joints[i].lasts[w][t]; x.Value > most.Value*(1+1e-9)+1e-6 {
				most, name = x, e.Joints[i].Name
			}
		}
		if most.Value == 0 {
			continue
		}
		checks, err := d.end(w, f, most.Value, lumber.Duration(t))
		if err != nil {
			checks = []measure.Check{measure.Refuse("", err)}
		}
		for _, c := range checks {
			if asked && !graver(c, worst) {
				continue
			}
			worst, asked = c, true
			worst.Notes = append([]string{name + ": " + e.Situations[most.Situation].Name}, c.Notes...)
			if c.Name != "" {
				worst.Notes = append([]string{c.Name}, worst.Notes...)
			}
			worst.Rests = append(rs.assumptions(), c.Rests...)
		}
	}
	worst.Name = wayNames[w]
	return worst
}

// graver reports whether a check comes out worse: short before no answer before the
// larger share of its limit.
func graver(a, b measure.Check) bool {
	rank := func(c measure.Check) int {
		switch {
		case c.Err != nil || c.Rule == nil:
			return 1
		case c.Verdict() == measure.Short:
			return 2
		}
		return 0
	}
	if x, y := rank(a), rank(b); x != y {
		return x > y
	}
	share := func(c measure.Check) float64 {
		switch {
		case c.AtLeast:
			return c.Limit / math.Max(c.Value, 1e-12)
		}
		return c.Value / math.Max(c.Limit, 1e-12)
	}
	return share(a) > share(b)*(1+1e-9)
}

// end checks one joist's end, loaded one way by a force.
func (d *Dock) end(w way, f fasten.Fastener, force float64, t lumber.Duration) ([]measure.Check, error) {
	h := &d.plan.Hardware.Ends
	switch h.By.Value {
	case "hanger":
		return d.hanger(f).Check(w.asked(force), d.softer(), fasten.Service{Temperature: 20}, t)
	case "angle":
		return d.angle(w, f, force, t)
	}
	j := d.throughRim(f, w == slid)
	if w == pulledOff {
		return j.Check(fasten.Demand{Withdrawal: force}, t)
	}
	return j.Check(fasten.Demand{Lateral: force}, t)
}

// asked returns a force as a connector is asked it.
func (w way) asked(force float64) fasten.Forces {
	switch w {
	case carried:
		return fasten.Forces{Down: force}
	case heldDown:
		return fasten.Forces{Up: force}
	case toAndFro:
		return fasten.Forces{Reversal: force}
	case pulledOff:
		return fasten.Forces{Along: force}
	}
	return fasten.Forces{Lateral: force}
}

// softer returns the grade of joist or rim that has the lower specific gravity.
func (d *Dock) softer() lumber.Grade {
	if d.rim.grade.G.SI() < d.joist.grade.G.SI() {
		return d.rim.grade
	}
	return d.joist.grade
}

// hanger returns the hanger as the plan has its maker's figures.
func (d *Dock) hanger(f fasten.Fastener) fasten.Connector {
	h := &d.plan.Hardware.Ends
	by, err := strconv.ParseFloat(h.For.Value, 64)
	if err != nil {
		by = 0 // not said
	}
	return fasten.Connector{
		Name:    "hanger",
		Printed: fasten.Forces{Down: h.Down.Value, Up: h.Up.Value, Lateral: h.Lateral.Value, Along: h.Along.Value, Reversal: h.ToAndFro.Value},
		For:     fasten.Forces{Down: by, Up: by, Lateral: by, Along: by, Reversal: by},
		Nail:    f, HeaderNails: h.Count.Value, JoistNails: h.InJoist.Value, Steel: h.Steel.Value,
		Screws: f.Kind == fasten.WoodScrew || f.Kind == fasten.LagScrew, ScrewsListed: h.Listed.Value == "yes",
	}
}

// rimPiece and joistPiece are the lumber as a joint knows it, loaded along or across
// its grain. The nearest end of a rim is the one beside the first joist.
func (d *Dock) rimPiece(along bool) fasten.Piece {
	return fasten.Piece{
		Thickness: float64(d.rimPlies) * d.rim.section.Width, Width: d.rim.section.Depth, Grade: d.rim.grade, Angle: across(along),
		Smooth: d.rim.smooth(), End: d.joist.section.Width / 2, Edge: known(d.plan.Hardware.Ends.Edge),
	}
}

func (d *Dock) joistPiece(along bool) fasten.Piece {
	h := &d.plan.Hardware.Ends
	return fasten.Piece{
		Thickness: d.joist.section.Width, Width: d.joist.section.Depth, Grade: d.joist.grade, Angle: across(along),
		Smooth: d.joist.smooth(), End: known(h.End), Edge: known(h.Edge),
	}
}

func across(along bool) float64 {
	if along {
		return 0
	}
	return math.Pi / 2
}

// known returns a quantity, 0 where the plan does not say: unknown to a joint.
func known(q plan.Quantity) float64 {
	if !plan.Has(q) {
		return 0
	}
	return q.Value
}

// upright sets the fasteners in an upright row, loaded along the row or across it.
func upright(j fasten.Joint, n int, spacing float64, sideways bool) fasten.Joint {
	j.Temperature = 20
	if sideways {
		j.PerRow, j.Rows, j.Between = 1, n, spacing
	} else {
		j.PerRow, j.Rows, j.Spacing = n, 1, spacing
	}
	return j
}

// throughRim is nails or screws through the rim into the joist's end grain.
func (d *Dock) throughRim(f fasten.Fastener, sideways bool) fasten.Joint {
	h := &d.plan.Hardware.Ends
	main := d.joistPiece(false)
	main.EndGrain, main.Thickness = true, math.Min(d.clear, 1)
	return upright(fasten.Joint{Fastener: f, Main: main, Side: d.rimPiece(sideways)}, h.Count.Value, known(h.Spacing), sideways)
}

// angle checks the bolts of an angle in joist and rim. What bends the angle itself is
// held against its maker's figure, too.
func (d *Dock) angle(w way, f fasten.Fastener, force float64, t lumber.Duration) ([]measure.Check, error) {
	h := &d.plan.Hardware.Ends
	steel := fasten.Piece{Material: fasten.Plate, Thickness: h.Steel.Value, Width: 2 * h.End.Value} // a leg as wide as twice its bolts' place
	if h.Steel.Value < 0.25*measure.Inch*(1-1e-9) {
		steel.Material = fasten.Sheet
	}
	inJoist := fasten.Joint{Fastener: f, Main: d.joistPiece(w == pulledOff), Side: steel}
	inRim := fasten.Joint{Fastener: f, Main: d.rimPiece(w == slid), Side: steel}
	inRim.Main.End = d.joist.section.Width + h.End.Value // its legs alike, beside the first joist
	inJoist = upright(inJoist, h.InJoist.Value, known(h.Spacing), w == pulledOff)
	inRim = upright(inRim, h.Count.Value, known(h.Spacing), w == slid)
	shear, pulled := fasten.Demand{Lateral: force}, fasten.Demand{Withdrawal: force}
	a, b := shear, shear
	switch w {
	case pulledOff:
		b = pulled
	case slid:
		a = pulled
	}
	out, err := inJoist.Check(a, t)
	if err != nil {
		return nil, err
	}
	more, err := inRim.Check(b, t)
	if err != nil {
		return nil, err
	}
	for i := range out {
		out[i].Name = "bolts in the joist: " + out[i].Name
	}
	for i := range more {
		more[i].Name = "bolts in the rim: " + more[i].Name
	}
	out = append(out, more...)
	if w == pulledOff || w == slid {
		own := measure.Check{Name: "the angle itself, by its maker", Kind: measure.Force, Value: force, Limit: h.Along.Value, Rule: srcMaker}
		if w == slid {
			own.Limit = h.Lateral.Value
		}
		out = append(out, own)
	}
	return out, nil
}

var (
	srcAsked = &measure.Source{Title: "a joint must hold what it is asked", Status: measure.Exact}
	srcMaker = &measure.Source{Title: "The maker's printed allowable, as the plan has it", Status: measure.OwnChoice}
)
