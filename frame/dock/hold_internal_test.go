package dock

import (
	"context"
	"errors"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// Screws over drums that bear on boards are asked what the envelope has, over all of
// them through one board into one joist.
func TestScrewsOverDrums(t *testing.T) {
	d := docks(t)["drums under boards"]
	f := &d.plan.Frame.Decking
	f.Screw = plan.Name{}
	if c := d.screwsOver(); !errors.Is(c.Err, measure.ErrUnknown) {
		t.Errorf("screws not known: %v", c)
	}
	f.Screw = plan.Name{Value: "No.10 x 3 wood screw", Known: measure.Measured, Path: "frame.decking.screw"}
	e, err := d.Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	pull := 0.0
	for _, b := range e.Bearings {
		pull = max(pull, b.Screw)
	}
	c := d.screwsOver()
	if pull == 0 || c.Err != nil || c.Value > pull*(1+1e-9) || !(c.Value > pull/2) || !(c.Limit > 0) {
		t.Errorf("%v, in the envelope %g N", c, pull)
	}
	one := c.Limit
	f.Screws.Value *= 2
	if c := d.screwsOver(); c.Limit != 2*one {
		t.Errorf("twice the screws hold %g N, once %g N", c.Limit, one)
	}
}

// The topics of one report share one envelope, and a trial of other hardware, too.
func TestSolvedOnce(t *testing.T) {
	d := *demoDock(t, "swim")
	d.trial = &trial{governing: &governing{}}
	a, err := d.tried()
	if err != nil {
		t.Fatal(err)
	}
	other := d
	other.trial = &trial{path: "hardware.dries", governing: d.trial.governing}
	third := d
	third.trial = &trial{path: "loads.snow", governing: d.trial.governing}
	b, _ := d.tried()
	c, _ := other.tried()
	e, err := third.tried()
	if a != b || a != c || err != nil || e == a || len(e.Situations) >= len(a.Situations) {
		t.Error("it was solved more than once, or another load was not solved")
	}
}
