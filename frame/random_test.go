package frame_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame"
)

// near fails the test unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.14g, want %.14g within %.2g", what, got, want, tol)
	}
}

func solve(t *testing.T, b frame.Beam) *frame.Line {
	t.Helper()
	l, err := b.Solve()
	if err != nil {
		t.Fatalf("%v\n%+v", err, b)
	}
	return l
}

// kind says what the supports of a random beam may be.
type kind int

const (
	linear  kind = iota // rigid and springs, no settlement
	settled             // the same with settlement
	letGo               // with supports that let go
)

// randomBeam makes a beam that stands: two rests that push and pull at the ends
// at least, or a clamp, and hinges only where the rests still hold the parts.
func randomBeam(r *rand.Rand, k kind) frame.Beam {
	b := frame.Beam{Length: 2 + 8*r.Float64(), EI: math.Exp(9 + 5*r.Float64())}
	if r.IntN(3) == 0 {
		b.GA = b.EI * (0.5 + 5*r.Float64())
	}
	n := 2 + r.IntN(4)
	for i := range n {
		at := b.Length * (float64(i) + 0.6*r.Float64()) / float64(n)
		rest := frame.Rest{At: at, Clamped: r.IntN(6) == 0}
		stiff := math.Exp(6 + 8*r.Float64())
		switch c := r.IntN(6); {
		case i == 0 || i == n-1 || c < 2:
			if r.IntN(2) == 0 {
				rest.Support = frame.Spring(stiff)
			}
		case c == 2 || k != letGo:
			rest.Support = frame.Spring(stiff)
		case c == 3:
			rest.Support = frame.OneWay(stiff)
		case c == 4:
			rest.Support = frame.Gap(0.02*r.Float64(), stiff)
		default:
			rest.Support = barrel(0.29, 0.88, 9806.65)
		}
		if k != linear && r.IntN(2) == 0 {
			rest.Settlement = 0.04 * (r.Float64() - 0.5)
		}
		b.Rests = append(b.Rests, rest)
	}
	if r.IntN(4) == 0 { // a hinge in an inner span is held from both sides
		if n >= 4 {
			b.Rests[0].Clamped = true
			b.Rests[n-1].Clamped = true
		} else {
			b.Rests[0].Clamped = true
		}
		b.Hinges = []float64{(b.Rests[n-2].At + b.Rests[n-1].At) / 2}
	}
	for range 1 + r.IntN(4) {
		b.Loads = append(b.Loads, randomLoad(r, b.Length))
	}
	return b
}

func randomLoad(r *rand.Rand, length float64) frame.Load {
	x, y := length*r.Float64(), length*r.Float64()
	size := 3000 * (r.Float64() - 0.3)
	switch r.IntN(4) {
	case 0:
		return frame.Load{From: x, P: size}
	case 1:
		return frame.Load{From: x, M: size}
	case 2:
		return frame.Uniform(math.Min(x, y), math.Max(x, y), size)
	}
	return frame.Load{From: math.Min(x, y), To: math.Max(x, y), Q: size, Rise: 2000*(r.Float64()-0.3) - size}
}

// barrel is a horizontal cylinder without weight that pushes up as far as it is
// under water: an example of a support of the caller's own.
func barrel(r, length, gamma float64) frame.Support {
	return func(sink float64) (force, stiffness, energy float64) {
		h := math.Min(math.Max(sink, 0), 2*r)
		q := math.Sqrt(math.Max(h*(2*r-h), 0))
		angle := math.Acos(math.Min(math.Max((r-h)/r, -1), 1))
		energy = gamma * length * (r*r*q - (r-h)*r*r*angle - q*q*q/3)
		if sink > 2*r {
			energy += gamma * length * math.Pi * r * r * (sink - 2*r)
		}
		return gamma * length * (r*r*angle - (r-h)*q), gamma * length * 2 * q, energy
	}
}

// sizes returns the largest shear, moment, slope and deflection of a line.
func sizes(l *frame.Line) frame.Diagram {
	var s frame.Diagram
	for _, p := range l.Pieces {
		for i := range 9 {
			d := l.At(p.Start.X + (p.To-p.Start.X)*float64(i)/8)
			s.Shear = math.Max(s.Shear, math.Abs(d.Shear))
			s.Moment = math.Max(s.Moment, math.Abs(d.Moment))
			s.Slope = math.Max(s.Slope, math.Abs(d.Slope))
			s.Deflection = math.Max(s.Deflection, math.Abs(d.Deflection))
		}
	}
	return s
}

// work returns the work that the loads would do on the way to the final
// movements, P w + M φ + ∫ q w, by Gauss points exact for the quintic times a
// line.
func work(b frame.Beam, l *frame.Line) float64 {
	var sum float64
	for _, ld := range b.Loads {
		if ld.To > ld.From {
			for _, p := range l.Pieces {
				lo, hi := math.Max(p.Start.X, ld.From), math.Min(p.To, ld.To)
				if hi <= lo {
					continue
				}
				x := []float64{-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526}
				w := []float64{0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538}
				for i := range x {
					at := lo + (hi-lo)/2*(1+x[i])
					q := ld.Q + ld.Rise*(at-ld.From)/(ld.To-ld.From)
					sum -= (hi - lo) / 2 * w[i] * q * l.At(at).Deflection
				}
			}
			continue
		}
		d := l.At(ld.From)
		sum += -ld.P*d.Deflection + ld.M*d.Slope
	}
	return sum
}

// total returns the sum of the loads and their turning effect about x = 0,
// clockwise positive.
func total(b frame.Beam) (force, moment float64) {
	for _, l := range b.Loads {
		if h := l.To - l.From; h > 0 {
			force += (l.Q + l.Rise/2) * h
			moment += l.Q*h*(l.From+h/2) + l.Rise/2*h*(l.From+2*h/3)
			continue
		}
		force += l.P
		moment += l.P*l.From - l.M
	}
	return force, moment
}
