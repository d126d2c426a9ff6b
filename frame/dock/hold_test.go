package dock_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// varied returns the report of a demo plan with another value at one path.
func varied(t testing.TB, text, path, value string) *dock.Report {
	t.Helper()
	p, err := plan.Read("test", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if p, err = p.Vary(path, value); err != nil {
		t.Fatal(err)
	}
	d, err := dock.Build(p)
	if err != nil {
		t.Fatal(err)
	}
	return reported(t, d, measure.US)
}

// The hanger of the swim platform by hand. Its figures are printed for a duration
// factor of 1 and, nothing being said, wood of 0.55; Southern Pine is 0.55, so that
// only wet service is left: 0.7 on nails (NDS Table 11.3.3, as quoted). Ten nails of
// 0.148 in carry more, so that down holds 0.7 x 1100 = 770 lbf, up 0.7 x 800 = 560,
// along the rim 0.7 x 700 = 490, and to and fro 0.7 x 500 = 350. Nothing is printed
// for the joist pulled off, so that it holds nothing.
func TestHangerByHand(t *testing.T) {
	r := report(t, demoText(t, "swim"))
	for name, limit := range map[string]float64{
		"Joist's end carried": 770, "Joist's end held down": 560, "Joist's end slid": 490, "Joist's end to and fro": 350, "Joist pulled off": 0,
	} {
		c := check(t, r, name)
		if got := c.Limit / measure.PoundForce; math.Abs(got-limit) > 0.5 {
			t.Errorf("%s: at most %.1f lbf, by hand %.1f lbf", name, got, limit)
		}
	}
	// The forces are the envelope's: with one factor for durations of 1 and more, the
	// largest governs.
	d, err := dock.Read("swim", strings.NewReader(demoText(t, "swim")))
	if err != nil {
		t.Fatal(err)
	}
	e, err := d.Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	var carries, pull float64
	for _, j := range e.Joints {
		if e.Situations[j.Carries.Situation].Duration != lumber.Permanent {
			carries = max(carries, j.Carries.Value)
		}
		pull = max(pull, j.Pull.Value)
	}
	if c := check(t, r, "Joist's end carried"); math.Abs(c.Value-carries) > 1e-3 {
		t.Errorf("carried with %g N, in the envelope %g N", c.Value, carries)
	}
	if c := check(t, r, "Joist pulled off"); math.Abs(c.Value-pull) > 1e-3 || c.Verdict() != measure.Short {
		t.Errorf("%v, in the envelope %g N", c, pull)
	}
}

const hanger = `"by": "hanger", "fastener": "10d common nail", "count": 10, "in_joist": 6, "steel": "0.06 in",`

// Nails through the rim into end grain hold nothing that pulls (NDS 12.2.3, as
// quoted), however many.
func TestNailsInEndGrain(t *testing.T) {
	for by, fastener := range map[string]string{"nails": "60d common nail", "screws": "No.14 x 6 wood screw"} {
		r := report(t, demoText(t, "swim", hanger, `"by": "`+by+`", "fastener": "`+fastener+`", "count": 4, "edge": "2 in", "spacing": "1-1/2 in",`))
		sound(t, r)
		c := check(t, r, "Joist pulled off its rim")
		if c.Verdict() != measure.Short || c.Limit != 0 || c.Value <= 0 {
			t.Errorf("%s: %v", by, c)
		}
		if c := check(t, r, "Joist's end carried"); c.Err != nil || !(c.Limit > 0) {
			t.Errorf("%s: %v", by, c)
		}
		if c := check(t, r, "Coating of the hangers"); c.Verdict() != measure.Holds {
			t.Errorf("%s: %v", by, c)
		}
	}
	short := report(t, demoText(t, "swim", hanger, `"by": "nails", "fastener": "8d common nail", "count": 4, "edge": "2 in", "spacing": "1-1/2 in",`))
	if c := check(t, short, "Joist's end carried"); c.Verdict() != measure.NoAnswer {
		t.Errorf("nails that do not reach the joist: %v", c)
	}
}

// An angle's bolts are checked in both pieces, and the angle by its maker's figure.
func TestAngle(t *testing.T) {
	angle := `"by": "angle", "fastener": "1/2 x 5 bolt", "count": 2, "in_joist": 2, "steel": "1/4 in", "edge": "2 in", "end": "3-1/2 in", "spacing": "2 in",`
	r := report(t, demoText(t, "swim", hanger, angle, `"along": "0 lbf"`, `"along": "40 lbf"`))
	sound(t, r)
	if c := check(t, r, "Joist pulled off its rim"); c.Verdict() != measure.Short || math.Abs(c.Limit/measure.PoundForce-40) > 1e-6 {
		t.Errorf("weak angle: %v", c)
	}
	for _, name := range []string{"Joist's end carried", "Joist's end slid", "Joist's end to and fro"} {
		if c := check(t, r, name); c.Err != nil || !(c.Limit > 0) {
			t.Errorf("%v", c)
		}
	}
	// How far bolts stand apart is asked where there are two in either piece.
	for counts, asked := range map[[2]string]bool{{"1", "1"}: false, {"2", "1"}: true, {"1", "2"}: true} {
		few := strings.NewReplacer(`"spacing": "2 in",`, "", `"count": 2`, `"count": `+counts[0], `"in_joist": 2`, `"in_joist": `+counts[1]).Replace(angle)
		c := check(t, report(t, demoText(t, "swim", hanger, few)), "Joist's end carried")
		if got := c.Err != nil && strings.Contains(c.Err.Error(), "spacing"); got != asked {
			t.Errorf("%v bolts, no spacing: %v", counts, c)
		}
	}
	thin := report(t, demoText(t, "swim", hanger, strings.Replace(angle, "1/4 in", "1/8 in", 1)))
	sound(t, thin)
}

// A strap by hand: 10000 lbf a part, its end leaves 70 %, two parts, over 12:
// 10000 x 0.7 x 2/12 = 1166.7 lbf. It is asked a drum of 22 lb with 40 lb of water,
// 62 lbf, that drops 1/2 in into a strap of 6000 lbf/ft = 500 lbf/in:
// 62 (1 + sqrt(1 + 2 x 500 x 0.5/62)) = 248.7 lbf, and 60 lbf of drag.
func TestTieByHand(t *testing.T) {
	r := report(t, demoText(t, "swim"))
	c := check(t, r, "Tie of plastic drum, the float dropping")
	want := 62*(1+math.Sqrt(1+2*500*0.5/62)) + 60
	if got := c.Value / measure.PoundForce; math.Abs(got-want) > 0.01 {
		t.Errorf("asked %.2f lbf, by hand %.2f lbf", got, want)
	}
	if got := c.Limit / measure.PoundForce; math.Abs(got-10000*0.7*2/12) > 0.01 {
		t.Errorf("at most %.2f lbf", got)
	}
	// Nobody looks into it: it counts as full of water at its heaviest, 62.43 lb/ft³ on
	// its 67 gal = 15477 in³, with its own 22 lb.
	full := varied(t, demoText(t, "swim"), "hardware.drums[1].watched", "no")
	heavy := 67.*231/1728*62.43 + 22
	want = heavy*(1+math.Sqrt(1+2*500*0.5/heavy)) + 60
	if f := check(t, full, "Tie of plastic drum, the float dropping"); math.Abs(f.Value/measure.PoundForce/want-1) > 1e-4 {
		t.Errorf("full %g lbf, by hand %g lbf", f.Value/measure.PoundForce, want)
	}
	// Over a square edge half is left.
	sharp := varied(t, demoText(t, "swim"), "hardware.ties[1].rounded", "no")
	if s := check(t, sharp, "Tie of plastic drum, the float dropping"); math.Abs(s.Limit-c.Limit/2) > 1e-6*c.Limit {
		t.Errorf("over an edge %g N, rounded %g N", s.Limit, c.Limit)
	}
}

// Air shut in at 20 °F (-6.67 °C) and cooled to -30 °C: dry, it would be at
// 243.15/266.48 of an atmosphere, 8.87 kPa too little; its vapour, 0.35 kPa at most,
// freezes out and leaves a little less.
func TestSealByHand(t *testing.T) {
	r := report(t, demoText(t, "swim", `"watched": "yes"`, `"watched": "yes", "suction": "12 kPa", "pressure": "20 kPa"`))
	dry := 101.325 * (1 - 243.15/266.483)
	c := check(t, r, "Suction in the closed drum")
	if got := c.Value / 1e3; got < dry || got > dry+0.4 || c.Verdict() != measure.Holds {
		t.Errorf("%v, dry %.2f kPa", c, dry)
	}
	if c := check(t, r, "Pressure in the closed drum"); c.Verdict() != measure.Short {
		t.Errorf("shut in the cold and left in the sun: %v", c)
	}
}

// Every unknown of the hardware that a check needs leaves it without an answer that
// names the field.
func TestHardwareUnknown(t *testing.T) {
	if testing.Short() {
		t.Skip("a report for each field takes its time")
	}
	text := demoText(t, "swim", `"watched": "yes"`, `"watched": "yes", "suction": "12 kPa", "pressure": "100 kPa"`)
	all := map[string]string{
		"joist_ends.by": "Joist's end carried", "joist_ends.fastener": "Joist's end slid", "joist_ends.count": "Joist pulled off",
		"joist_ends.in_joist": "Joist pulled off", "joist_ends.steel": "Joist's end carried", "joist_ends.down": "Joist's end carried",
		"joist_ends.up": "Joist's end held down", "joist_ends.lateral": "Joist's end slid", "joist_ends.along": "Joist pulled off",
		"joist_ends.to_and_fro": "Joist's end to and fro", "joist_ends.finish": "Coating of the fasteners",
		"joist_ends.bracket_finish": "Coating of the hangers", "deck_finish": "Coating of the screws",
		"ties[1].of": "Tie of plastic drum", "ties[1].strength": "Tie of plastic drum", "ties[1].efficiency": "Tie of plastic drum",
		"ties[1].parts": "Tie of plastic drum", "ties[1].point": "What that tie is made to", "ties[1].stiffness": "Tie of plastic drum",
		"drums[1].held": "What was in it", "drums[1].leak_tested": "Leak test", "drums[1].bungs": "Bungs",
		"drums[1].closed_at": "Suction", "drums[1].suction": "Suction", "drums[1].pressure": "Pressure", "drums[1].leak": "Tie of plastic drum",
	}
	i := 0
	for path, name := range all {
		i++
		if testing.Short() && i > 6 {
			break
		}
		r := varied(t, text, "hardware."+path, "unknown")
		sound(t, r)
		c := check(t, r, name)
		if c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
			t.Errorf("%s unknown: %v", path, c)
			continue
		}
		if !strings.Contains(c.Err.Error(), "hardware."+path) && path != "ties[1].point" {
			t.Errorf("%s unknown: %v", path, c.Err)
		}
	}
	r := varied(t, text, "hardware.drums[1].held", "unknown")
	if notes := strings.Join(check(t, r, "What was in it").Notes, " "); !strings.Contains(notes, "no drilling") {
		t.Errorf("a drum of unknown past: %q", notes)
	}
	for value, want := range map[string]measure.Verdict{"poison or solvent": measure.Short, "oil or fuel": measure.Short, "soap": measure.Holds} {
		if c := check(t, varied(t, text, "hardware.drums[1].held", value), "What was in it"); c.Verdict() != want {
			t.Errorf("held %s: %v", value, c)
		}
	}
	for _, path := range []string{"ties[1].floats", "drums[1].floats"} {
		name := map[string]string{"ties[1].floats": "Tie of plastic drum", "drums[1].floats": "Leak test"}[path]
		if c := check(t, varied(t, text, "hardware."+path, "unknown"), name); c.Verdict() != measure.NoAnswer {
			t.Errorf("%s unknown: %v", path, c)
		}
		p, err := plan.Read("test", strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if p, err = p.Vary("hardware."+path, "another float"); err != nil {
			t.Fatal(err)
		}
		if _, err := dock.Build(p); !errors.Is(err, measure.ErrName) {
			t.Errorf("%s of a float that is not there: %v", path, err)
		}
	}
}

// The schedule counts what the plan has, and names what it has not.
func TestHardware(t *testing.T) {
	text := demoText(t, "swim", `"gap": "0 in"`, `"gap": "0 in", "screw": "No.10 x 3 wood screw", "screws": 2`)
	d, err := dock.Read("test", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	rows, buy, err := d.Hardware()
	if err != nil {
		t.Fatal(err)
	}
	// 14 joists have 28 ends, 10 nails and 6; boards of 5-1/2 in over 10 ft are 22.
	want := map[string]int{"hanger in the rim": 280, "hanger in the joist": 168, "deck boards": 22 * 14 * 2}
	for _, r := range rows {
		if r.Count != want[r.Place] {
			t.Errorf("%s: %d, by hand %d", r.Place, r.Count, want[r.Place])
		}
		delete(want, r.Place)
	}
	if len(want) > 0 {
		t.Errorf("no rows for %v", want)
	}
	counts := map[string]int{"hanger,": 28 + 3, "tie of strap": 36 + 4, "10d common nail": 448 + 45}
	for _, i := range buy {
		for what, n := range counts {
			if strings.HasPrefix(i.What, what) || strings.Contains(i.What, what) && what != "hanger," {
				if i.Count != n {
					t.Errorf("%s: %d, by hand %d", i.What, i.Count, n)
				}
				delete(counts, what)
			}
		}
	}
	if len(counts) > 0 {
		t.Errorf("not on the list: %v of %v", counts, buy)
	}
	d, err = dock.Read("test", strings.NewReader(demoText(t, "work")))
	if err != nil {
		t.Fatal(err)
	}
	rows, _, err = d.Hardware()
	if len(rows) != 0 || !errors.Is(err, measure.ErrUnknown) || !strings.Contains(err.Error(), "hardware.joist_ends.by") || !strings.Contains(err.Error(), "foam block") {
		t.Errorf("without hardware: %v, %v", rows, err)
	}
	for by, with := range map[string]string{"nails": "16d common nail", "angle": "1/2 x 5 bolt"} {
		text := demoText(t, "swim", hanger, `"by": "`+by+`", "fastener": "`+with+`", "count": 2, "in_joist": 2, "steel": "1/4 in", "edge": "2 in", "end": "4 in", "spacing": "2 in",`)
		if d, err = dock.Read("test", strings.NewReader(text)); err != nil {
			t.Fatal(err)
		}
		rows, _, err := d.Hardware()
		if len(rows) == 0 || err == nil || !strings.Contains(err.Error(), "frame.decking.screw") {
			t.Errorf("%s: %v, %v", by, rows, err)
		}
	}
	if _, _, err := new(dock.Dock).Hardware(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("the zero dock: %v", err)
	}
}

// Whatever single value of the hardware is replaced by whatever text, the plan is
// refused with a place or reported soundly.
func FuzzHardware(f *testing.F) {
	var paths []string
	for _, e := range plan.Explain() {
		if strings.HasPrefix(e.Path, "hardware.") {
			paths = append(paths, strings.ReplaceAll(e.Path, "[]", "[1]"))
		}
	}
	for i, value := range []string{"unknown", "nails", "angle", "0 lbf", "1e6 N", "screws", "1 in", "rope", "chain", "20", "50 C"} {
		f.Add(uint(5*i), value)
	}
	f.Fuzz(func(t *testing.T, at uint, value string) {
		p, err := plan.Read("swim", strings.NewReader(demoText(t, "swim")))
		if err != nil {
			t.Fatal(err)
		}
		if p, err = p.Vary(paths[at%uint(len(paths))], value); err != nil {
			return
		}
		d, err := dock.Build(p)
		if err != nil {
			return
		}
		sound(t, reported(t, d, measure.SI))
		if _, buy, _ := d.Hardware(); buy != nil {
			for _, i := range buy {
				if i.Count < 3 {
					t.Errorf("%s: %d with spares", i.What, i.Count)
				}
			}
		}
	})
}
