package dock

import (
	"math"
	"testing"

	"example.org/floewright/frame/plan"
)

// TestTrialsShare: what a report's trials take over from the plan's own dock is what
// they would find themselves.
func TestTrialsShare(t *testing.T) {
	for _, demo := range plan.Demos() {
		in, err := plan.Demo(demo)
		if err != nil {
			t.Fatal(err)
		}
		d, err := Read(demo, in)
		if err != nil {
			t.Fatal(err)
		}
		d.trial = &trial{governing: &governing{}}
		if _, err := d.tried(); err != nil {
			t.Fatal(err)
		}
		shared := 0
		for _, path := range []string{
			"loads.snow", "loads.uneven", "loads.pried", "loads.cleat", "loads.bump", "loads.skid_friction", "loads.person_centre",
			"loads.flotation", "site.wave_height", "site.ten_crests", "site.ice_drop", "frame.moisture", "frame.rims.grade",
		} {
			values := plan.Plausible(path)
			if len(values) == 0 {
				t.Errorf("%s has no other plausible value", path)
			}
			for _, value := range values {
				v := d.variant(path, value)
				if v == nil {
					t.Fatalf("%s: %s at %s makes no dock", demo, value, path)
				}
				if v.trial.known() != nil {
					shared++
				}
				got, err := v.tried()
				if err != nil {
					t.Fatal(err)
				}
				v.trial = &trial{path: path, governing: &governing{names: d.trial.names}}
				want, err := v.tried()
				if err != nil {
					t.Fatal(err)
				}
				sameEnvelope(t, demo+": "+path+" "+value, got, want)
			}
		}
		if shared < 10 {
			t.Errorf("%s: only %d trials share something", demo, shared)
		}
	}
}

// sameEnvelope compares all that two envelopes of the same situations found.
func sameEnvelope(t *testing.T, name string, got, want *Envelope) {
	t.Helper()
	same := func(what string, a, b float64) {
		if !(math.Abs(a-b) <= 1e-6*math.Max(1, math.Abs(b))) {
			t.Errorf("%s: %s is %.9g, on its own %.9g", name, what, a, b)
		}
	}
	if len(got.Situations) != len(want.Situations) {
		t.Fatalf("%s: %d situations, on its own %d", name, len(got.Situations), len(want.Situations))
	}
	for i, o := range got.Situations {
		w := want.Situations[i]
		if o.Name != w.Name || (o.Err == nil) != (w.Err == nil) {
			t.Errorf("%s: %s %v, on its own %s %v", name, o.Name, o.Err, w.Name, w.Err)
		}
		for k := range o.Push {
			same("push in "+o.Name, o.Push[k], w.Push[k])
		}
	}
	for i, m := range got.Members {
		w := want.Members[i]
		same(m.Name+" sags", m.Sag.Value, w.Sag.Value)
		same(m.Name+" hogs", m.Hog.Value, w.Hog.Value)
		same(m.Name+" shears", m.Shear.Value, w.Shear.Value)
		same(m.Name+" bends sideways", m.Weak.Value, w.Weak.Value)
	}
	for i, j := range got.Joints {
		w := want.Joints[i]
		for k, pair := range [][2]float64{
			{j.Carries.Value, w.Carries.Value}, {j.Holds.Value, w.Holds.Value}, {j.Swing, w.Swing}, {j.Pull.Value, w.Pull.Value}, {j.Slides.Value, w.Slides.Value},
		} {
			same(j.Name+[]string{" carries", " holds", " swings", " is pulled", " slides"}[k], pair[0], pair[1])
		}
	}
	for i, b := range got.Bearings {
		w := want.Bearings[i]
		same(b.Name+" pushes", b.Push.Value, w.Push.Value)
		same(b.Name+" hangs", b.Hangs.Value, w.Hangs.Value)
		same(b.Name+" spreads", b.Spread, w.Spread)
	}
	same("sag", got.Comfort.Sag.Value, want.Comfort.Sag.Value)
	same("twist", got.Comfort.Twist.Value, want.Comfort.Twist.Value)
	same("dip", got.Comfort.Dip, want.Comfort.Dip)
}
