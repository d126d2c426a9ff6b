package dock_test

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// TestListsInUnits: the lists have the units of the report's texts, named by their
// columns and one system at a time, and the same numbers as the shop.
func TestListsInUnits(t *testing.T) {
	shop := listsOf(t, demoText(t, "swim", `"site": {`, `"site": { "slope": "10 %",`, `"stock": [`, `"shop": { "sled_load": "200 lb", "carriers": 4, "items": [ { "name": "bolt", "need": 24, "mass": "1 lb" } ] }, "stock": [`))
	scales := map[measure.System]map[string]float64{
		measure.US: {"_in": measure.Inch, "_lb": measure.Pound, "_lbf": measure.PoundForce},
		measure.SI: {"_mm": measure.Millimetre, "_kg": 1, "_N": 1},
	}
	for units, scale := range scales {
		r := &dock.Report{Units: units, Shop: shop}
		seen := map[string]int{}
		list := func(write func(io.Writer) error) [][]string {
			t.Helper()
			var b bytes.Buffer
			if err := write(&b); err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(&b).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			for _, head := range rows[0] {
				if _, unit, ok := strings.Cut(head, "_"); ok {
					if _, known := scale["_"+unit]; !known {
						t.Errorf("system %d: column %s", units, head)
					}
				}
			}
			return rows
		}
		// same compares a field with SI, to half of the last decimal that its column has.
		same := func(head, text string, want, last float64) {
			t.Helper()
			_, unit, _ := strings.Cut(head, "_")
			x, err := strconv.ParseFloat(text, 64)
			if err != nil || math.Abs(x*scale["_"+unit]-want) > last*scale["_"+unit]*0.5001 {
				t.Errorf("system %d: %s is %q, want %g in SI", units, head, text, want)
			}
			seen[unit]++
		}
		fine := map[measure.System]float64{measure.US: 1e-4, measure.SI: 0.1}[units]
		cut := list(r.WriteCutList)
		for i, row := 1, 0; row < len(shop.Cutting.Boards); row++ {
			b := shop.Cutting.Boards[row]
			for _, p := range b.Pieces {
				same(cut[0][2], cut[i][2], b.Length, fine)
				same(cut[0][5], cut[i][5], p.At, fine)
				same(cut[0][6], cut[i][6], p.Length, fine)
				i++
			}
			i += len(b.Offcuts)
		}
		carry := list(r.WriteCarryList)
		for i, h := range shop.Carry {
			if h.Each > 0 {
				same(carry[0][3], carry[i+1][3], h.Each, 0.1)
			}
			if h.Pull > 0 {
				same(carry[0][7], carry[i+1][7], h.Pull, map[measure.System]float64{measure.US: 0.1, measure.SI: 1}[units])
			}
		}
		hardware := list(r.WriteHardwareList)
		same(hardware[0][4], hardware[1][4], 24*measure.Pound, 0.01)
		if len(seen) != 3 || seen["in"]+seen["mm"] < 60 {
			t.Errorf("system %d: %v", units, seen)
		}
	}
	// Sixteenths are whole, and nothing trails.
	var b bytes.Buffer
	if err := (&dock.Report{Shop: shop}).WriteCutList(&b); err != nil || !strings.Contains(b.String(), "2x8,120.5,no,joist,0.125,114") {
		t.Errorf("%v\n%.400s", err, b.String())
	}
}
