// Package ulp measures how far computed numbers lie from references of many
// digits, in units in the last place (ulp). Tests alone use it.
//
// A reference file is a CSV without quotes: a name, the inputs separated by
// semicolons, the value in 25 digits and, where the value itself is no measure
// of what can be asked for, the size that is. An input is the float64 nearest to
// its decimals, and the value belongs to exactly that float64. The size is the
// modulus of a pair, the largest value along a beam, or the value times the
// condition number: by how much more than an input the value moves, relatively.
// Lines that begin with # tell what the names mean.
package ulp

import (
	"bytes"
	"fmt"
	"math"
	"math/big"
	"os"
	"strconv"
	"strings"
	"testing"
)

// A Point is one reference.
type Point struct {
	In   []float64
	Want *big.Float
	Size float64 // whose last place counts
}

// prec is that of the references, in bits: more than 25 digits.
const prec = 120

// Unit returns one unit in the last place of a number of this size: the
// distance between the two float64 that enclose it. It is that of the smallest
// normal number below it.
func Unit(size float64) float64 {
	_, e := math.Frexp(size)
	return math.Ldexp(1, max(e-53, -1074))
}

// Off returns how far x lies from the reference in units in the last place of
// its size; infinite where x is no number.
func (p Point) Off(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return math.Inf(1)
	}
	d := new(big.Float).SetPrec(prec).SetFloat64(x)
	d.Sub(d, p.Want)
	f, _ := d.Float64()
	return math.Abs(f) / Unit(p.Size)
}

// Parse reads a reference file.
func Parse(data []byte) (map[string][]Point, error) {
	out := map[string][]Point{}
	for i, line := range bytes.Split(data, []byte("\n")) {
		if len(line) == 0 || line[0] == '#' {
			continue
		}
		cell := strings.Split(string(line), ",")
		if len(cell) != 3 && len(cell) != 4 {
			return nil, fmt.Errorf("line %d: %d cells, want 3 or 4", i+1, len(cell))
		}
		var p Point
		for _, s := range strings.Split(cell[1], ";") {
			x, err := strconv.ParseFloat(s, 64)
			if err != nil {
				return nil, fmt.Errorf("line %d: %w", i+1, err)
			}
			p.In = append(p.In, x)
		}
		var err error
		if p.Want, _, err = big.ParseFloat(cell[2], 10, prec, big.ToNearestEven); err != nil {
			return nil, fmt.Errorf("line %d: %w", i+1, err)
		}
		p.Size, _ = p.Want.Float64()
		if len(cell) == 4 {
			if p.Size, err = strconv.ParseFloat(cell[3], 64); err != nil {
				return nil, fmt.Errorf("line %d: %w", i+1, err)
			}
		}
		if !(math.Abs(p.Size) > 0) {
			return nil, fmt.Errorf("line %d: the size is %g", i+1, p.Size)
		}
		out[cell[0]] = append(out[cell[0]], p)
	}
	return out, nil
}

// References are those of a file, by name.
type References struct {
	t      *testing.T
	file   string
	points map[string][]Point
}

// Open reads a reference file for a test. The test fails at its end where a
// name of the file was never asked for.
func Open(t *testing.T, file string) *References {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	points, err := Parse(data)
	if err != nil {
		t.Fatal(file, err)
	}
	t.Cleanup(func() {
		for name := range points {
			t.Errorf("%s: nothing computes %s", file, name)
		}
	})
	return &References{t, file, points}
}

// Within measures a closed form against the references of its name, logs the
// largest error and where it lies, and fails the test where it is more than so
// many units in the last place.
func (r *References) Within(bound float64, name string, of func(x []float64) (float64, error)) {
	r.t.Run(name, func(t *testing.T) {
		all := r.points[name]
		delete(r.points, name)
		if len(all) < 5 {
			t.Fatalf("%d references", len(all))
		}
		worst, at := -1.0, Point{}
		for _, p := range all {
			x, err := of(p.In)
			if err != nil {
				t.Fatalf("%v: %v", p.In, err)
			}
			if off := p.Off(x); off > worst {
				worst, at = off, p
			}
		}
		t.Logf("%s: %.2f ulp at %s, of %d points", name, worst, list(at.In), len(all))
		if !(worst <= bound) {
			x, _ := of(at.In)
			t.Errorf("%s is %.2f ulp off at %s: %.17g, want %s; at most %g", name, worst, list(at.In), x, at.Want.Text('g', 25), bound)
		}
	})
}

func list(in []float64) string {
	var s []string
	for _, x := range in {
		s = append(s, strconv.FormatFloat(x, 'g', -1, 64))
	}
	return strings.Join(s, ";")
}
