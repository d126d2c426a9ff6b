package lumber_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// TestPinnedCuts compares plans for invented jobs with what they were before: few pieces
// of odd lengths, many of equal ones, boards in hand with knots and boards for sale.
func TestPinnedCuts(t *testing.T) {
	cut := 0
	pinned.Check(t, "cuts", 240, func(r *rand.Rand) []any {
		var wants []lumber.Want
		longest := pinned.Tenths(r, 1.2, 4.2)
		for range 1 + r.IntN(7) {
			w := lumber.Want{Section: "2x8", Length: pinned.Tenths(r, 0.15*longest, longest), Count: 1 + r.IntN(12)}
			if r.IntN(3) == 0 {
				w.Length = float64(int(w.Length*10)) / 10
			}
			if r.IntN(9) == 0 {
				w.Count = 40 + r.IntN(60)
			}
			if r.IntN(6) == 0 {
				w.Section = "2x6"
			}
			wants = append(wants, w)
		}
		var stock []lumber.Stock
		for _, section := range []string{"2x8", "2x6"} {
			for _, feet := range []float64{8, 10, 12, 16} {
				s := lumber.Stock{Section: section, Length: feet*measure.Foot + 0.01*float64(r.IntN(3))}
				if r.IntN(2) == 0 {
					s.InHand = r.IntN(9)
					if s.InHand > 0 && r.IntN(3) == 0 {
						at := pinned.Tenths(r, 0, s.Length-0.01)
						s.Defects = [][2]float64{{at, min(at+0.2, s.Length)}}
					}
				}
				if s.InHand == 0 && r.IntN(4) == 0 {
					continue
				}
				if s.InHand == 0 || s.Defects == nil && r.IntN(2) == 0 {
					s.Price = math.Round(feet*pinned.Tenths(r, 80, 120)) / 100
				}
				stock = append(stock, s)
			}
		}
		plan, err := lumber.Cut(context.Background(), wants, stock, lumber.Saw{Kerf: 0.003 * float64(r.IntN(2)), Trim: 0.01 * float64(r.IntN(2))})
		if err != nil {
			return []any{err.Error()}
		}
		cut++
		return []any{plan}
	})
	if cut < 120 {
		t.Errorf("only %d were planned", cut)
	}
}

// TestPinnedDesigns compares the values and checks of members of many grades and sizes,
// and the stamps and lists they are read from, with what they were before.
func TestPinnedDesigns(t *testing.T) {
	grades := lumber.Grades()
	trees := lumber.Trees()
	var species []string
	for _, tree := range trees {
		species = append(species, tree.Name)
	}
	sizes := []string{"1x6", "5/4x6", "6/4x6", "2x4", "2x6", "2x8", "2x10", "2x12", "2x14", "3x8", "4x4", "4x6", "4x12", "4x14", "6x6", "8x8"}
	names := []string{"No.1", "No.2", "No.3", "Select Structural", "Stud", "Construction", "Standard", "Utility", "No.2 Dense", "No.1 & Btr"}
	pinned.Check(t, "designs", 500, func(r *rand.Rand) []any {
		size := sizes[r.IntN(len(sizes))]
		s, err := lumber.Size(size)
		if err != nil {
			return []any{size, err.Error()}
		}
		name := names[r.IntN(len(names))]
		var out []any
		g, err := lumber.Lookup(grades[r.IntN(len(grades))].Species, name, s)
		if err != nil {
			out = append(out, err.Error())
			if g, err = lumber.Weakest(name, s, species[:1+r.IntN(len(species))]...); err != nil {
				return append(out, err.Error())
			}
		}
		m := lumber.Member{
			Section: s, Grade: g, Length: []float64{1, 2.4, 3.6}[r.IntN(3)], Unbraced: []float64{0, 0.4, 3}[r.IntN(3)], Held: r.IntN(3) == 0,
			Temperature: []float64{20, 37.8, 45, 60}[r.IntN(4)], Plies: r.IntN(4), Dry: r.IntN(4) == 0, Smooth: r.IntN(2) == 0,
			Repetitive: r.IntN(2) == 0, Flat: r.IntN(3) == 0,
		}
		when := []lumber.Duration{lumber.Permanent, lumber.TenYears}[r.IntN(2)]
		design, err := m.Adjusted(when)
		out = append(out, g, design, err)
		demand := lumber.Demand{
			Moment: 2000 * r.Float64(), Shear: 4000 * r.Float64(), Reaction: 5000 * r.Float64(), Bearing: pinned.Tenths(r, 0.02, 0.17), Inner: r.IntN(2) == 0,
			Long: 0.01 * r.Float64(), Short: 0.01 * r.Float64(), Tip: r.IntN(5) == 0,
		}
		if r.IntN(2) == 0 {
			demand.FlatMoment = 300 * r.Float64()
		}
		if r.IntN(2) == 0 {
			demand.Axial = 9000 * (r.Float64() - 0.5)
		}
		checks, err := m.Check(demand, when)
		out = append(out, checks, err)
		for _, n := range []lumber.Notch{{Depth: s.Depth / 5, Length: 0.1}, {Depth: s.Depth * 0.3, Inner: true, From: 0.4}, {Depth: s.Depth / 6, Inner: true, From: 5 * s.Depth, Length: 0.05}} {
			n.Top = r.IntN(2) == 0
			notched, err := m.CheckNotch(n, 2000*r.Float64(), when)
			out = append(out, notched, err)
		}
		joint, err := m.CheckJoint(s.Depth*pinned.Tenths(r, 0.5, 1), s.Depth*pinned.Tenths(r, 0, 8), 1500, when)
		out = append(out, joint, err)
		span, check, err := m.Span([]float64{0.3, 0.4064, 0.6096, 0.7}[r.IntN(4)], 480, 1900)
		out = append(out, span, check, err)
		reach, check, err := m.BeamSpan(pinned.Tenths(r, 1, 4), pinned.Tenths(r, 0, 0.3), 480, 1900)
		out = append(out, reach, check, err)
		w, err := m.Weights()
		out = append(out, w, err)
		out = append(out, w.Light)
		for _, p := range []lumber.Property{lumber.Fb, lumber.E, lumber.Emin} {
			f, err := lumber.SizeFactor(p, g, s)
			flat, err2 := lumber.FlatUse(p, g, s)
			wet, err3 := lumber.WetService(p, g, s, m.Dry)
			out = append(out, f, err, flat, err2, wet, err3)
		}
		stamp, err := lumber.ReadStamp(fmt.Sprintf("%s %s %s", name, []string{"S-DRY", "S-GRN", "KD19", ""}[r.IntN(4)], []string{"SYP", "D FIR", "HEM-FIR", "S-P-F", "DF-L (N)"}[r.IntN(5)]))
		return append(out, stamp, err)
	})
}
