package frame_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// known fails the test unless the error is one that the package promises.
func known(t *testing.T, err error) {
	t.Helper()
	var bad *measure.Error
	var loose *frame.MechanismError
	if !errors.As(err, &bad) && !errors.As(err, &loose) && !errors.Is(err, frame.ErrUnsettled) && !errors.Is(err, frame.ErrCapsizes) {
		t.Fatalf("an error of no known kind: %v", err)
	}
}

// FuzzSolve takes any numbers: the answer is an error of a known kind or a state
// in which forces and moments balance.
func FuzzSolve(f *testing.F) {
	nan, inf := math.NaN(), math.Inf(1)
	f.Add(4.0, 1e6, 0.0, 2.0, 0.0, 4.0, 2.0, 1e5, 0.01, 0.0, 4.0, 1000.0, 500.0, 1.0, 100.0, uint8(0))
	f.Add(4.0, 1e6, 1e5, 2.0, 0.0, 4.0, 1.0, 1e5, 0.0, 1.0, 3.0, -1000.0, 500.0, 1.0, 100.0, uint8(7))
	f.Add(6.0, 1e5, 0.0, 3.0, 1e-7, 6.0, 0.0, 1e12, 0.01, 0.0, 1e-9, 10.0, 50.0, 6.0, -1e3, uint8(29))
	f.Add(4.0, 1e6, 0.0, nan, 0.0, 4.0, 2.0, 1e5, 0.01, 0.0, 4.0, 1e3, inf, 1.0, 100.0, uint8(255))
	f.Add(1e-30, 1e30, 1e-30, 5e-31, 0.0, 1e-30, 5e-31, 1e30, 0.0, 0.0, 1e-30, 1e30, 1e30, 0.0, 1e30, uint8(6))
	// Places next to each other with enormous stiffness between.
	f.Add(6.0, 1e5, 0.0, 3.0, 1e-7, 6.0, 0.0, 5e11, 0.01, 0.0, 1e-9, 10.0, 50.0, 6.0, -1000.0, uint8(0x5b))
	f.Add(96.0, 99959.0, 0.0, 3.0, 1e-7, 1.5, 0.0, 1e5, 0.01, 0.0, 1e-9, 2.5, -20.0, 6.0, -1000.0, uint8(0x58))
	f.Add(83.0, 1e30, 1e-30, 5e-31, 0.0, 1e-30, 5e-31, 1e30, 0.0, 0.0, 1e-30, 1e30, 1e30, 0.0, 6.7e29, uint8('T'))
	f.Fuzz(func(t *testing.T, length, ei, ga, hinge, at1, at2, at3, k, settle, from, to, q, qto, at, p float64, how uint8) {
		s := frame.Spring(k)
		switch how >> 2 & 3 {
		case 1:
			s = frame.OneWay(k)
		case 2:
			s = frame.Gap(settle, k)
		case 3:
			s = barrel(0.3, 0.9, 9806.65)
		}
		b := frame.Beam{
			Length: length, EI: ei, GA: ga,
			Rests: []frame.Rest{{At: at1, Clamped: how&1 != 0}, {At: at2, Settlement: settle, Clamped: how&32 != 0}, {At: at3, Support: s, Settlement: settle}},
			Loads: []frame.Load{{From: from, To: to, Q: q, Rise: qto - q}, {From: at, P: p}, {From: at, M: p}},
		}
		if how&2 != 0 {
			b.Hinges = []float64{hinge}
		}
		if how&16 != 0 {
			b.Rests[1].Support = s
		}
		l, err := b.Solve()
		if err != nil {
			known(t, err)
			return
		}
		force, moment := total(b)
		size := math.Abs(force) + math.Abs(moment)/length
		for i, push := range l.Push {
			force -= push
			moment -= push*b.Rests[i].At + l.Couple[i]
			size += math.Abs(push) + math.Abs(l.Couple[i])/length
		}
		for _, ld := range b.Loads {
			size += math.Abs(ld.P) + math.Abs(ld.M)/length + (math.Abs(ld.Q)+math.Abs(ld.Q+ld.Rise))*math.Abs(ld.To-ld.From)
		}
		size += sizes(l).Shear + sizes(l).Moment/length
		if !(math.Abs(force) <= 1e-7*size && math.Abs(moment) <= 1e-7*size*length) {
			t.Errorf("%g N and %g N·m left over, of %g N\n%+v\n%+v", force, moment, size, b, l)
		}
		if !(l.Residual <= 1e-9) {
			t.Errorf("residual %g", l.Residual)
		}
		e := l.Extremes()
		for _, x := range []float64{0, length / 3, at, at3} {
			d := l.At(x)
			if !(d.Moment <= e.Sag.Moment+1e-9*sizes(l).Moment && d.Moment >= e.Hog.Moment-1e-9*sizes(l).Moment) {
				t.Errorf("%v outside %v", d, e)
			}
		}
	})
}

// FuzzRandomBeam runs sound beams of every make through what must hold.
func FuzzRandomBeam(f *testing.F) {
	for seed := range uint64(8) {
		f.Add(seed, uint8(seed))
	}
	f.Fuzz(func(t *testing.T, seed uint64, k uint8) {
		b := randomBeam(rand.New(rand.NewPCG(seed, 11)), kind(k%3))
		l := solve(t, b)
		balance(t, b, l)
		m := solve(t, mirror(b))
		for i := range l.Push {
			near(t, "mirrored push", m.Push[i], l.Push[i], 1e-7*(1+sizes(l).Shear+math.Abs(l.Push[i])))
		}
	})
}

// FuzzInfluence compares influence lines with a load set down.
func FuzzInfluence(f *testing.F) {
	f.Add(uint64(1), 0.3, 0.7, 1)
	f.Add(uint64(2), 0.0, 1.0, 0)
	f.Add(uint64(3), math.NaN(), 0.5, 9)
	f.Fuzz(func(t *testing.T, seed uint64, x, a float64, rest int) {
		b := randomBeam(rand.New(rand.NewPCG(seed, 11)), linear)
		b.Loads = nil
		x *= b.Length
		moment, err := b.MomentInfluence(x)
		if err != nil {
			known(t, err)
			if x >= 0 && x <= b.Length {
				t.Fatal(err)
			}
			return
		}
		if !(a >= 0 && a <= 1) || math.Abs(a*b.Length-x) < 1e-6 {
			return
		}
		b.Loads = []frame.Load{frame.Point(a*b.Length, 1)}
		l := solve(t, b)
		near(t, "moment", moment.At(a*b.Length), l.At(x).Moment, 1e-7*(sizes(l).Moment+b.Length))
		push, err := b.PushInfluence(rest)
		if err != nil {
			known(t, err)
			return
		}
		near(t, "push", push.At(a*b.Length), l.Push[rest], 1e-7*(1+math.Abs(l.Push[rest])))
		plus, minus := push.Area(0, b.Length)
		b.Loads = []frame.Load{frame.Uniform(0, b.Length, 1)}
		near(t, "area", plus+minus, solve(t, b).Push[rest], 1e-7*b.Length)
	})
}

// FuzzEnvelope: every case lies within the envelope, and its peaks are met.
func FuzzEnvelope(f *testing.F) {
	f.Add(uint64(1), 500.0, 0.1, 0.3)
	f.Add(uint64(5), -500.0, 0.5, 1.0)
	f.Add(uint64(5), math.Inf(1), -1.0, 2.0)
	f.Fuzz(func(t *testing.T, seed uint64, q, step, x float64) {
		b := randomBeam(rand.New(rand.NewPCG(seed, 11)), letGo)
		cases, err := b.Patterns(q)
		if err != nil {
			known(t, err)
			return
		}
		cases = cases[:min(len(cases), 8)]
		e, err := b.Envelope(cases, x)
		if err != nil {
			known(t, err)
			return
		}
		for _, c := range cases {
			with := b
			with.Loads = append(append([]frame.Load(nil), b.Loads...), c...)
			l := solve(t, with)
			for i, p := range l.Push {
				if p > e.Push[i].Most || p < e.Push[i].Least {
					t.Errorf("push %g outside %+v", p, e.Push[i])
				}
			}
			if m := l.At(x).Moment; m > e.Stations[0].Moment.Most || m < e.Stations[0].Moment.Least || m > e.Sag.Moment+1e-9*math.Abs(e.Sag.Moment)+1e-9*b.Length*b.Length*math.Abs(q)+1e-9 {
				t.Errorf("moment %g outside %+v, %v", m, e.Stations[0], e.Sag)
			}
		}
		if !(step > 0.05 && step < 1) {
			step = 0.5
		}
		w, err := b.Walk([]frame.Load{frame.Point(0, q)}, step*b.Length, x)
		if err != nil {
			known(t, err)
			return
		}
		size := b.Length * math.Abs(q)
		for _, l := range b.Loads {
			size += math.Abs(l.M) + b.Length*(math.Abs(l.P)+b.Length*(math.Abs(l.Q)+math.Abs(l.Q+l.Rise)))
		}
		if w.Sag.Moment < w.Stations[0].Moment.Most-1e-9*size || w.Sag.Case >= len(w.Cases) {
			t.Errorf("a section beyond the peak: %+v, %v", w.Stations[0], w.Sag)
		}
	})
}

// FuzzSupports: the force is the slope of the energy and the stiffness that of
// the force, and a one-way support never pulls.
func FuzzSupports(f *testing.F) {
	f.Add(0.1, 1000.0, 0.3)
	f.Add(0.0, 0.0, -1.0)
	f.Add(-0.1, math.NaN(), 2.0)
	f.Fuzz(func(t *testing.T, g, k, sink float64) {
		if !(math.Abs(sink) < 1e3) {
			return
		}
		for i, s := range []frame.Support{frame.Spring(k), frame.OneWay(k), frame.Gap(g, k)} {
			force, stiffness, energy := s(sink)
			if !(k >= 0) || math.IsInf(k, 1) || i == 2 && (math.IsNaN(g) || math.IsInf(g, 0)) {
				if !math.IsNaN(force) || !math.IsNaN(stiffness) || !math.IsNaN(energy) {
					t.Errorf("bad data gives %g, %g, %g", force, stiffness, energy)
				}
				continue
			}
			if i > 0 && force < 0 || stiffness != 0 && stiffness != k || energy < 0 {
				t.Errorf("support %d at %g: %g, %g, %g", i, sink, force, stiffness, energy)
			}
			if stiffness > 0 && energy < math.MaxFloat64 && force*force < math.MaxFloat64 {
				// ½ F²/k, however the support was written.
				near(t, "energy", energy, force*force/stiffness/2, 1e-12*energy+math.SmallestNonzeroFloat64*1e10)
			}
		}
	})
}

// FuzzGrillage runs frames of every make, spoiled by any numbers: an error of a
// known kind, or balance of the whole and of every node.
func FuzzGrillage(f *testing.F) {
	f.Add(uint64(1), uint8(0), 1e5, 1e3, 0.0, 500.0, 0.0)
	f.Add(uint64(2), uint8(1), 1e5, 0.0, 1e5, -500.0, 0.1)
	f.Add(uint64(3), uint8(2), 1e-9, 1e12, 1e-3, 1e9, -0.2)
	f.Add(uint64(5), uint8(16), 1e5, 1e3, 0.0, 500.0, 0.5)
	f.Add(uint64(6), uint8(18), 1e5, 1e3, 0.0, 5000.0, 1.5)
	f.Add(uint64(4), uint8(6), math.NaN(), 1.0, 1.0, math.Inf(1), math.NaN())
	f.Fuzz(func(t *testing.T, seed uint64, k uint8, ei, gj, ga, p, level float64) {
		r := rand.New(rand.NewPCG(seed, 13))
		g := randomGrid(r, kind(k%3))
		if k&4 != 0 { // spoil a member, a load and a seat
			m := &g.Members[r.IntN(len(g.Members))]
			m.EI, m.GJ, m.GA = ei, gj, ga
			m.Loads = append(m.Loads, frame.Point(0.1, p))
			g.Seats[r.IntN(len(g.Seats))].Level = level
		}
		if k&16 != 0 { // give weights and pushes a height
			g.Weights = []frame.Weight{{Node: r.IntN(len(g.Nodes)), Force: p, Height: level}, {Force: 300, Height: 0.7}}
			g.Seats[0].Heights = [2]float64{-0.2, level}
		}
		if k&8 != 0 { // take a seat away
			i := r.IntN(len(g.Seats))
			g.Seats = append(g.Seats[:i:i], g.Seats[i+1:]...)
		}
		s, err := g.Solve()
		if err != nil {
			known(t, err)
			if k&28 == 0 {
				t.Fatal(err)
			}
			return
		}
		if k&31 == 0 { // as found, and found again from nearby
			near := *s
			near.Move = slices.Clone(s.Move)
			near.Move[0][0] += 1e-3
			again, err := g.SolveFrom(&near)
			if err != nil {
				t.Fatal(err)
			}
			gridBalance(t, g, again)
		}
		if k&16 != 0 {
			// Heights add moments of the second order: the force balances.
			var up, size float64
			for _, f := range g.Forces {
				up, size = up+f[0], size+math.Abs(f[0])
			}
			for _, w := range g.Weights {
				up, size = up-w.Force, size+math.Abs(w.Force)
			}
			for i := range g.Members {
				for _, l := range g.Members[i].Loads {
					f := l.P
					if l.To > l.From {
						f = (l.Q + l.Rise/2) * (l.To - l.From)
					}
					up, size = up-f, size+math.Abs(f)
				}
			}
			for _, f := range s.Push {
				up, size = up+f, size+math.Abs(f)
			}
			if !(math.Abs(up) <= 1e-7*(size+s.Lines[0].EI)) {
				t.Errorf("%g N left over of %g N", up, size)
			}
			return
		}
		gridBalance(t, g, s)
	})
}

// FuzzTorsion: never more than a thin strip, never less than the circle inside,
// the same either way round, and growing with the width.
func FuzzTorsion(f *testing.F) {
	f.Add(0.0381, 0.18415)
	f.Add(1.0, 1.0)
	f.Add(-1.0, math.NaN())
	f.Fuzz(func(t *testing.T, a, b float64) {
		j, err := frame.Torsion(a, b)
		if err != nil {
			known(t, err)
			return
		}
		k, err := frame.Torsion(b, a)
		if err != nil || j != k {
			t.Errorf("%g and, turned, %g, %v", j, k, err)
		}
		short, long := math.Min(a, b), math.Max(a, b)
		if thin := long * short * short * short / 3; !(j <= thin*(1+1e-12)) || !(j >= math.Pi/32*short*short*short*short) {
			t.Errorf("%g for %g by %g, thin strip %g", j, a, b, thin)
		}
		if wider, err := frame.Torsion(short, long*1.01); err == nil && !(wider > j) {
			t.Errorf("%g, and wider %g", j, wider)
		}
	})
}
