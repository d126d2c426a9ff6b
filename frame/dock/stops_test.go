package dock_test

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// On every new plan the floats are kept where they are, by the rims, by stops or by
// blocks, and the boards to cut those from are on the list.
func TestNewPlansHoldTheirFloats(t *testing.T) {
	if testing.Short() {
		t.Skip("several reports")
	}
	seen := map[string]int{}
	for _, length := range []float64{12, 24} {
		for _, width := range []float64{4, 6, 8, 9, 10, 12, 14} {
			for _, s := range []measure.System{measure.US, measure.SI} {
				text, err := plan.Start{Units: s, Length: length * measure.Foot, Width: width * measure.Foot, Drum: "drum", Girth: 1.85, Long: 0.886, Mass: 10}.JSON()
				if err != nil {
					t.Errorf("%g x %g: %v", length, width, err)
					continue
				}
				d, err := dock.Read("new", strings.NewReader(string(text)))
				if err != nil {
					t.Fatal(err)
				}
				l, err := d.Layout()
				if err != nil {
					t.Fatal(err)
				}
				for _, c := range l.Conflicts {
					if tied := strings.Contains(string(text), `"under joists"`); !tied {
						t.Errorf("%g x %g ft: %s", length, width, c.Format(s))
					}
				}
				for _, p := range l.Drawing.Pieces {
					seen[strings.Fields(p.Name)[0]]++
				}
				if length < 20 || s == measure.SI {
					continue
				}
				if cut := check(t, reported(t, d, s), "Pieces without a board, of those"); cut.Verdict() != measure.Holds {
					t.Errorf("%g x %g ft: %v", length, width, cut)
				}
			}
		}
	}
	if seen["stop"] == 0 || seen["block"] == 0 {
		t.Errorf("no stops or no blocks: %v", seen)
	}
}

const blocked = `"tied": "yes", "blocks": "yes", "block_fastener": "16d common nail", "block_fasteners": 3,`

// A block's nails bear half of what pulls on one float, a stop's half of what pulls on the
// row.
func TestStopNails(t *testing.T) {
	const name = "Nails at an end of a stop or block"
	nails := func(swap ...string) measure.Check {
		t.Helper()
		return check(t, reported(t, swappedDock(t, "swim", swap...), measure.US), name)
	}
	c := nails(`"tied": "yes",`, blocked)
	// 16d common nail, wood 1-1/2 in, Southern Pine: 154 lbf (NDS 2018 Table 12N, as
	// quoted); three, wet in use 0.7, in end grain 0.67, ten years.
	if want := 3 * 154 * 0.7 * 0.67 * measure.PoundForce; c.Verdict() != measure.Holds || math.Abs(c.Limit-want) > 0.01*want || math.Abs(c.Value-30*measure.PoundForce) > 1e-6 {
		t.Errorf("%v, want 30 of %.0f lbf", c, want/measure.PoundForce)
	}
	if s := nails(`"tied": "yes",`, strings.Replace(blocked, `"blocks": "yes"`, `"stops": "9 ft 6 in"`, 1)); math.Abs(s.Value-3*c.Value) > 1e-6 || s.Limit != c.Limit {
		t.Errorf("of the row %v, of one %v", s, c)
	}
	if s := nails(`"tied": "yes",`, blocked, `"drag": "60 lbf"`, `"drag": "600 lbf"`); s.Verdict() != measure.Short {
		t.Errorf("%v", s)
	}
	if s := nails(); s.Verdict() != measure.Holds || s.Numbers(measure.US) != "no stops and no blocks" {
		t.Errorf("%v", s)
	}
	for from, to := range map[string]string{`"16d common nail"`: `"unknown"`, `"block_fasteners": 3`: `"block_fasteners": "unknown"`, `"blocks": "yes"`: `"stops": "unknown"`} {
		if s := nails(`"tied": "yes",`, strings.Replace(blocked, from, to, 1)); s.Verdict() != measure.NoAnswer {
			t.Errorf("%s: %v", to, s)
		}
	}
	if _, err := dock.Read("f", strings.NewReader(demoText(t, "swim", `"tied": "yes",`, strings.Replace(blocked, "16d common", "99d", 1)))); err == nil || !strings.Contains(err.Error(), "floats[1].block_fastener") {
		t.Errorf("%v", err)
	}
	rows, _, _ := swappedDock(t, "swim", `"tied": "yes",`, blocked, `["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, `["3 ft", "7 ft 6 in"]`).Hardware()
	for _, r := range rows {
		if strings.HasPrefix(r.Place, "stops and blocks") {
			return
		}
	}
	t.Errorf("the nails are not on the list: %+v", rows)
}

// Blocks stand off the floats as far as practice leaves them, wherever there is room.
func TestBlocksKeepFloats(t *testing.T) {
	for _, marks := range []string{`["21-5/8 in", "8 ft 2-3/8 in"]`, `["3 ft", "7 ft 6 in"]`, `["5 ft"]`} {
		for _, blocks := range []string{"no", "yes"} {
			d := swappedDock(t, "swim", `["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, marks, `"tied": "yes",`, strings.Replace(blocked, `"blocks": "yes"`, `"blocks": "`+blocks+`"`, 1))
			c := check(t, reported(t, d, measure.US), "Floats kept")
			if want := map[string]measure.Verdict{"no": measure.Short, "yes": measure.Holds}[blocks]; c.Verdict() != want {
				t.Errorf("%s, blocks %s: %v, %v", marks, blocks, c, c.Notes)
			}
		}
	}
}
