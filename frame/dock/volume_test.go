package dock_test

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/float"
	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

const swimVolume = `"material": "plastic", "volume": "67 gal"`

// TestDrumVolume: what the floats hold up is the drums' outside volume where the plan has
// it, and else a share of the plain cylinder of girth and length, by hand: 73 in around and
// 36.5 in long make 73²/(4π) x 36.5 = 15478.5 cu in.
func TestDrumVolume(t *testing.T) {
	const plain = 15478.5 * measure.Inch * measure.Inch * measure.Inch
	const name = "Weight of the whole dock"
	water := 997.7 // kg/m³ at 22.2 °C
	for _, c := range []struct {
		said   string
		volume float64
		stands string
	}{
		{swimVolume, 67 * measure.USGallon, ""},
		{`"material": "plastic", "volume": "60 gal"`, 60 * measure.USGallon, ""},
		{`"material": "steel", "volume": "60 gal"`, 60 * measure.USGallon, ""},
		{`"material": "plastic"`, 0.84 * plain, "84 %"},
		{`"material": "plastic", "volume": "unknown"`, 0.84 * plain, "84 %"},
		{`"tied": "yes"`, 0.84 * plain, "84 %"},
		{`"material": "steel"`, plain, "the plain cylinder"},
	} {
		text := demoText(t, "swim", swimVolume, c.said)
		if strings.HasPrefix(c.said, `"tied"`) {
			text = strings.Replace(text, `"tied": "yes",
      "bays"`, `"bays"`, 1)
		}
		r := report(t, text)
		k := check(t, r, name)
		if got := k.Limit / 18 / water; math.Abs(got/c.volume-1) > 1e-4 {
			t.Errorf("%s: a drum holds up %.2f L, by hand %.2f L", c.said, got*1000, c.volume*1000)
		}
		said := ""
		for _, a := range k.Rests {
			if a.Name == "floats[1].volume" && a.Known == measure.Unknown {
				said = a.Text
			}
		}
		if !strings.Contains(said, c.stands) || (said == "") != (c.stands == "") {
			t.Errorf("%s: stands in: %q", c.said, said)
		}
		if noted := strings.Contains(strings.Join(k.Notes, "\n"), "outside volume is not known"); noted != (c.stands != "") {
			t.Errorf("%s: notes %q", c.said, k.Notes)
		}
	}
}

// TestDrumMaterialDecides: a plan that says neither volume nor material turns on the
// material where plastic sinks what steel holds.
func TestDrumMaterialDecides(t *testing.T) {
	text := demoText(t, "swim", ", "+swimVolume, "", `"mass": "60 lb", "along": "2 ft"`, `"mass": "6500 lb", "along": "12 ft"`)
	c := check(t, report(t, text), "Weight of the whole dock")
	found := false
	for _, a := range c.Rests {
		found = found || a.Name == "floats[1].material" && a.Decides && a.Known == measure.Assumed
	}
	if !found || c.Verdict() != measure.Short {
		t.Errorf("%s: %s rests on %+v", c.Name, c.Words(), c.Rests)
	}
}

// TestDrumVolumeMistakes: a volume that no drum of that size has, and one of a block.
func TestDrumVolumeMistakes(t *testing.T) {
	for _, c := range []struct{ demo, old, said, want string }{
		{"swim", swimVolume, `"volume": "55 L"`, "floats[1].volume"},
		{"swim", swimVolume, `"volume": "70 gal"`, "from 40.2 gal to 69.0 gal"},
		{"work", `"height": "0.4 m"`, `"height": "0.4 m", "volume": "500 L"`, "a block's volume is that of its sides"},
	} {
		_, err := dock.Read("plan", strings.NewReader(demoText(t, c.demo, c.old, c.said)))
		var errs plan.Errors
		if !errors.As(err, &errs) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.said, err)
		}
	}
}

// TestNewPlanHasVolume: a starting plan of any preset holds up what the preset says, to the
// digits that are printed.
func TestNewPlanHasVolume(t *testing.T) {
	for _, p := range float.Drums() {
		for _, material := range []string{"", "steel", "plastic"} {
			for _, known := range []bool{true, false} {
				s := plan.Start{Length: 16 * measure.Foot, Width: 10 * measure.Foot, Drum: p.Name, Girth: math.Pi * p.Diameter.Value, Long: p.Length.Value, Mass: p.Mass.Value, Material: material}
				want := p.Displacement.Value
				if known {
					s.Volume = want
				} else if want = math.Pi / 4 * p.Diameter.Value * p.Diameter.Value * p.Length.Value; material != "steel" {
					want *= float.LeastTapered
				}
				text, err := s.JSON()
				if err != nil {
					t.Fatal(err)
				}
				d, err := dock.Read("new", bytes.NewReader(text))
				if err != nil {
					t.Fatal(err)
				}
				shape, err := d.Shape()
				if err != nil {
					t.Fatal(err)
				}
				state, err := d.Empty()
				if err != nil {
					t.Fatal(err)
				}
				u, err := state.Unit(0)
				if err != nil {
					t.Fatal(err)
				}
				if got := u.Volume / u.Share; math.Abs(got/want-1) > 0.003 {
					t.Errorf("%s, %q, known %v: a drum of %d has %.1f L, want %.1f L", p.Name, material, known, len(shape.Floats), got*1000, want*1000)
				}
			}
		}
	}
}
