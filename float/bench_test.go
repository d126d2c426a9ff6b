package float_test

import (
	"math"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
)

// eight returns an invented 10 × 20 ft dock on eight drums with three people.
func eight() *float.Platform { return rows(4) }

// rows returns such a dock with n pairs of drums and a load in proportion.
func rows(n int) *float.Platform {
	p := &float.Platform{Density: 999.7}
	end := 1.6 * float64(n-1) / 2
	for i := range n {
		for _, y := range []float64{-1.15, 1.15} {
			p.Units = append(p.Units, float.Unit{
				Body: float.Cylinder{Diameter: 0.5715, Length: 0.8509},
				At:   r3.Vec{X: 1.6*float64(i) - end, Y: y, Z: -0.28575}, Mass: 18,
			})
		}
	}
	p.Weights = []float.Weight{{Mass: 162.5 * float64(n), At: r3.Vec{Z: 0.14}}}
	for _, x := range []float64{-1, 0.2, 2} {
		p.Weights = append(p.Weights, float.Weight{Mass: 21 * float64(n), At: r3.Vec{X: x, Y: 1.2, Z: 1.25}})
	}
	x := end + 0.648
	p.Corners = []r3.Vec{{X: -x, Y: -1.524, Z: 0.25}, {X: x, Y: -1.524, Z: 0.25}, {X: x, Y: 1.524, Z: 0.25}, {X: -x, Y: 1.524, Z: 0.25}}
	return p
}

// Settle from cold: 8 drums, 3 people. Goal: 5 µs, no allocation.
func BenchmarkSettle(b *testing.B) {
	p := eight()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Settle(); err != nil {
			b.Fatal(err)
		}
	}
}

// The baseline: what is written first. Each drum in 100 slices along its axis,
// each slice a segment; heel, trim and level by Newton with a Jacobian of
// forward differences; no energy, no safeguard. Goal: 60 times slower.
func BenchmarkSettleSliced(b *testing.B) {
	p := eight()
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := slicedRest(p); !ok {
			b.Fatal("no rest")
		}
	}
}

func TestSlicedBaselineAgrees(t *testing.T) {
	p := eight()
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	got, ok := slicedRest(p)
	if !ok {
		t.Fatal("no rest")
	}
	near(t, "heel", got[0], s.Heel, 1e-6)
	near(t, "trim", got[1], s.Trim, 1e-6)
	near(t, "level", got[2], s.Level, 1e-6)
}

// slicedRest returns heel, trim and level.
func slicedRest(p *float.Platform) ([3]float64, bool) {
	imbalance := func(q [3]float64) [3]float64 {
		sh, ch := math.Sincos(q[0])
		st, ct := math.Sincos(q[1])
		n := r3.Vec{X: -st, Y: -sh * ct, Z: ch * ct}
		var lift, mass float64
		var moment r3.Vec
		for _, w := range p.Weights {
			mass += w.Mass
			moment = r3.Add(moment, r3.Scale(w.Mass, w.At))
		}
		for _, u := range p.Units {
			mass += u.Mass
			moment = r3.Add(moment, r3.Scale(u.Mass, u.At))
			c := u.Body.(float.Cylinder)
			r := c.Diameter / 2
			sin, cos := math.Sincos(u.Heading)
			a := r3.Vec{X: cos, Y: sin}
			slope := r3.Dot(n, a)
			m := math.Sqrt(1 - slope*slope)
			e := r3.Scale(1/m, r3.Sub(n, r3.Scale(slope, a)))
			const slices = 100
			for i := range slices {
				x := c.Length * ((float64(i)+0.5)/slices - 0.5)
				at := r3.Add(u.At, r3.Scale(x, a))
				k := (r3.Dot(n, at) + q[2]) / (m * r)
				if k >= 1 {
					continue
				}
				area, low := math.Pi*r*r, 0.0
				if k > -1 {
					area = r * r * (math.Acos(k) - k*math.Sqrt(1-k*k))
					low = 2. / 3 * r * r * r * math.Pow(1-k*k, 1.5) / area
				}
				w := p.Density * area * c.Length / slices
				lift += w
				moment = r3.Sub(moment, r3.Scale(w, r3.Sub(at, r3.Scale(low, e))))
			}
		}
		return [3]float64{
			(mass - lift) / mass,
			r3.Dot(moment, r3.Vec{Y: -ch, Z: -sh}) / mass,
			r3.Dot(moment, r3.Vec{X: -ct, Y: sh * st, Z: -ch * st}) / mass,
		}
	}
	var q [3]float64
	q[2] = 0.2
	for range 50 {
		f := imbalance(q)
		if math.Abs(f[0])+math.Abs(f[1])+math.Abs(f[2]) < 1e-10 {
			return q, true
		}
		var j [3][4]float64
		for k := range 3 {
			const h = 1e-7
			o := q
			o[k] += h
			g := imbalance(o)
			for i := range 3 {
				j[i][k] = (g[i] - f[i]) / h
				j[i][3] = -f[i]
			}
		}
		for c := range 3 { // elimination with pivoting
			top := c
			for i := c; i < 3; i++ {
				if math.Abs(j[i][c]) > math.Abs(j[top][c]) {
					top = i
				}
			}
			j[c], j[top] = j[top], j[c]
			for i := range 3 {
				if i != c {
					w := j[i][c] / j[c][c]
					for k := c; k < 4; k++ {
						j[i][k] -= w * j[c][k]
					}
				}
			}
		}
		for k := range 3 {
			q[k] += j[k][3] / j[k][k]
		}
	}
	return q, false
}

// Linear in the number of drums.
func BenchmarkSettleMany(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			p := rows(n / 2)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := p.Settle(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A righting curve of 61 angles over 30 degrees. Goal: 150 µs.
func BenchmarkRighting(b *testing.B) {
	p := eight()
	angles := make([]float64, 61)
	for i := range angles {
		angles[i] = float64(i) * 0.5 * math.Pi / 180
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Righting(0, angles); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCylinderWet(b *testing.B) {
	c := float.Cylinder{Diameter: 0.5715, Length: 0.8509}
	for _, at := range []struct {
		name    string
		h, trim float64
	}{{"level", 0.05, 0}, {"inside", 0.05, 0.05}, {"hoof", 0.28, 0.1}, {"steep", 0.1, 1.2}} {
		b.Run(at.name, func(b *testing.B) {
			up := r3.Vec{X: -math.Sin(at.trim), Z: math.Cos(at.trim)}
			b.ReportAllocs()
			for b.Loop() {
				c.Wet(at.h, up)
			}
		})
	}
}

func BenchmarkSettleLeaking(b *testing.B) {
	p := eight()
	for i := range p.Units {
		p.Units[i].Leak = 0.02
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Settle(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCapsize(b *testing.B) {
	p := eight().With(float.Weight{Mass: 400, At: r3.Vec{Y: 1.4, Z: 1.2}})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Settle(); err == nil {
			b.Fatal("floats")
		}
	}
}

func BenchmarkPost(b *testing.B) {
	p := eight()
	p.Weights = p.Weights[:1]
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Post(float.Crowd{Inset: 0.15}); err != nil {
			b.Fatal(err)
		}
	}
}
