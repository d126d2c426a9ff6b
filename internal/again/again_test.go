package again

import (
	"math"
	"math/big"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/frame/layout"
	"example.org/floewright/ice"
	"example.org/floewright/ice/season"
	"example.org/floewright/internal/ulp"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A form is an elementary closed form: where its references lie, the spans from which fresh
// inputs are drawn, the formula as its source prints it in many digits, what the library gives,
// and by how many units in the last place they may differ, as the table of DEVELOPERS has it.
type form struct {
	pkg, name string
	spans     [][2]float64 // evenly in the logarithm where both ends are positive
	exact     func(x []num) num
	call      func(x []float64) (float64, error)
	most      float64
	size      func(x []float64) float64 // what counts where the value itself can be asked for no more; nil is the value
}

func worth(f measure.Factor, err error) (float64, error) { return f.Value, err }

func plate(x []float64) ice.Plate { return ice.Plate{Thickness: x[0], E: x[1], Nu: x[2]} }

func rigidity(x []num) num {
	return product(x[1], x[0], x[0], x[0]).div(of(12).mul(of(1).sub(x[2].sq())))
}

// buckles is the factor of a beam or a column by the ratio of its stresses.
func buckles(a num, c string) num {
	half := of(1).add(a).div(dec(c).mul(of(2)))
	return half.sub(half.sq().sub(a.div(dec(c))).sqrt())
}

// shrinks is a share from its line in percent.
func shrinks(moisture num, at0, slope string) num {
	return dec(at0).sub(product(dec(slope), of(100), moisture)).div(of(100))
}

// rest is what is left of 1 where a sheet floats in fresh water.
func rest(density num) num { return of(1000).sub(density) }

var forms = []form{
	{
		"float", "Cylinder.Volume",
		[][2]float64{{0.002, 100}, {0.002, 100}},
		func(x []num) num { return product(pi, x[0], x[0], x[1]).div(of(4)) },
		func(x []float64) (float64, error) { return float.Cylinder{Diameter: x[0], Length: x[1]}.Volume(), nil },
		0.5,
		nil,
	},
	{
		"float", "Period",
		[][2]float64{{1e-2, 1e8}, {1e-2, 1e8}},
		func(x []num) num { return product(of(2), pi, x[0].div(x[1]).sqrt()) },
		func(x []float64) (float64, error) { return float.Period(x[0], x[1]) },
		1.9,
		nil,
	},
	{
		"lumber", "Section.Inertia",
		[][2]float64{{0.01, 0.4}, {0.01, 0.4}},
		func(x []num) num { return product(x[0], x[1], x[1], x[1]).div(of(12)) },
		func(x []float64) (float64, error) { return lumber.Section{Width: x[0], Depth: x[1]}.Inertia(), nil },
		2.3,
		nil,
	},
	{
		"lumber", "BeamStability",
		[][2]float64{{1e6, 4e7}, {2e8, 1e10}, {1, 12}, {0.14, 0.5}, {0.06, 0.13}},
		func(x []num) num {
			rb := x[2].mul(x[3]).div(x[4].sq())
			return buckles(dec("1.2").mul(x[1]).div(rb).div(x[0]), "0.95")
		},
		func(x []float64) (float64, error) {
			return worth(lumber.BeamStability(x[0], x[1], x[2], x[3], x[4]))
		},
		4.8,
		nil,
	},
	{
		"lumber", "ColumnStability",
		[][2]float64{{1e6, 4e7}, {1e8, 1e10}, {1, 50}},
		func(x []num) num { return buckles(dec("0.822").mul(x[1]).div(x[2].sq()).div(x[0]), "0.8") },
		func(x []float64) (float64, error) { return worth(lumber.ColumnStability(x[0], x[1], x[2])) },
		3.5,
		nil,
	},
	{
		"lumber", "PoreFull moisture",
		[][2]float64{{0.2, 0.9}},
		func(x []num) num {
			basic := x[0].div(of(1).add(dec("0.27").mul(x[0])))
			return dec("1.54").sub(basic).div(dec("1.54").mul(basic))
		},
		func(x []float64) (float64, error) {
			m, _, err := lumber.PoreFull(x[0])
			return m, err
		},
		3.6,
		nil,
	},
	{
		"lumber", "Density",
		[][2]float64{{0.3, 0.7}, {0.01, 0.6}},
		func(x []num) num {
			percent := x[1].mul(of(100))
			below := of(1).add(product(dec("0.009"), x[0], percent))
			if percent.Cmp(of(30).Float) > 0 {
				below = of(1).add(product(dec("0.009"), x[0], of(30)))
			}
			cubicFoot := product(dec("0.3048"), dec("0.3048"), dec("0.3048"))
			return product(dec("62.4"), dec("0.45359237").div(cubicFoot), x[0]).div(below).mul(of(1).add(percent.div(of(100))))
		},
		func(x []float64) (float64, error) { return lumber.Density(x[0], x[1]) },
		3.2,
		nil,
	},
	{
		"lumber", "Shrinkage width",
		[][2]float64{{0.08, 0.19}},
		func(x []num) num { return shrinks(x[0], "6.031", "0.215") },
		func(x []float64) (float64, error) {
			w, _, err := lumber.Shrinkage(x[0])
			return w, err
		},
		1.2,
		func([]float64) float64 { return 0.06031 },
	},
	{
		"lumber", "Shrinkage thickness",
		[][2]float64{{0.08, 0.19}},
		func(x []num) num { return shrinks(x[0], "5.062", "0.181") },
		func(x []float64) (float64, error) {
			_, d, err := lumber.Shrinkage(x[0])
			return d, err
		},
		1.1,
		func([]float64) float64 { return 0.05062 },
	},
	{
		"lumber", "Gap",
		[][2]float64{{0.09, 0.2}, {0.08, 0.19}, {0.001, 0.01}, {0.08, 0.19}},
		func(x []num) num {
			before, after := shrinks(x[1], "6.031", "0.215"), shrinks(x[3], "6.031", "0.215")
			return x[2].add(x[0].div(of(1).sub(before)).mul(after.sub(before)))
		},
		func(x []float64) (float64, error) { return lumber.Gap(x[0], x[1], x[2], x[3]) },
		0.7,
		func(x []float64) float64 { return x[2] + 0.12*x[0] },
	},
	{
		"ice", "Plate.Rigidity",
		[][2]float64{{0.02, 3}, {1e8, 1e10}, {0.1, 0.49}},
		rigidity,
		func(x []float64) (float64, error) { return plate(x).Rigidity() },
		3.0,
		nil,
	},
	{
		"ice", "Plate.CharacteristicLength",
		[][2]float64{{0.02, 3}, {1e8, 1e10}, {0.1, 0.49}},
		func(x []num) num { return rigidity(x).div(dec("9806.65")).sqrt().sqrt() },
		func(x []float64) (float64, error) { return plate(x).CharacteristicLength() },
		1.4,
		nil,
	},
	{
		"ice", "Cover.MostSnow",
		[][2]float64{{0.05, 2}, {0, 0}, {850, 920}, {100, 400}},
		func(x []num) num { return x[0].mul(rest(x[2])).div(x[3]) },
		func(x []float64) (float64, error) {
			return ice.Cover{Ice: x[0], Snow: x[1], IceDensity: x[2], SnowDensity: x[3]}.MostSnow()
		},
		1.4,
		nil,
	},
	{
		"ice", "MeltIn",
		[][2]float64{{1, 1000}, {1, 1e6}},
		func(x []num) num { return x[0].mul(x[1]).div(of(917).mul(dec("3.34e5"))) },
		func(x []float64) (float64, error) { return ice.MeltIn(x[0], x[1]) },
		1.3,
		nil,
	},
	{
		"ice", "Class.Thickness",
		[][2]float64{{3e4, 1.7e6}, {100, 2e5}},
		func(x []num) num { return x[1].div(x[0]).sqrt() },
		func(x []float64) (float64, error) {
			return ice.Class{Name: "a class", A: x[0], Source: &measure.Source{Title: "a rule"}}.Thickness(x[1])
		},
		0.8,
		nil,
	},
	{
		"ice/season", "AlphaOf",
		[][2]float64{{0.01, 1.5}, {1, 5000}},
		func(x []num) num { return x[0].div(x[1].sqrt()) },
		func(x []float64) (float64, error) { return season.AlphaOf(x[0], x[1]) },
		1.3,
		nil,
	},
	{
		"frame/layout", "Diagonal",
		[][2]float64{{0.05, 50}, {0.05, 50}},
		func(x []num) num { return x[0].sq().add(x[1].sq()).sqrt() },
		func(x []float64) (float64, error) { return layout.Diagonal(x[0], x[1]) },
		1.9,
		nil,
	},
	{
		"frame/layout", "Corner",
		[][2]float64{{1, 2}, {1, 2}, {1.05, 1.9}},
		func(x []num) num {
			return x[0].sq().add(x[1].sq()).sub(x[2].sq()).div(product(of(2), x[0], x[1])).acos()
		},
		func(x []float64) (float64, error) { return layout.Corner(x[0], x[1], x[2]) },
		2.9,
		nil,
	},
	{
		"float/moor", "Ramp.Needed",
		[][2]float64{{0.5, 2}, {0, 0.5}, {-2, -1}, {-1, 0}},
		func(x []num) num { // 1 in 3
			drop := of(0)
			for _, level := range x[2:] {
				d := x[0].sub(x[1].add(level))
				if d = (num{d.Abs(d.Float)}); d.Cmp(drop.Float) > 0 {
					drop = d
				}
			}
			return drop.mul(of(10).sqrt())
		},
		func(x []float64) (float64, error) {
			return moor.Ramp{Length: 1, Width: 1, Shore: x[0], Deck: x[1]}.Needed(x[2], x[3])
		},
		0,
		nil,
	},
	{
		"float/moor", "Ramp.Reaction",
		[][2]float64{{1, 12}, {0.5, 2}, {20, 600}, {0, 5000}, {0, 3000}},
		func(x []num) num {
			return product(x[3], x[0], x[1]).add(x[2].mul(dec("9.80665"))).div(of(2)).add(x[4])
		},
		func(x []float64) (float64, error) {
			return moor.Ramp{Length: x[0], Width: x[1], Mass: x[2]}.Reaction(x[3], x[4])
		},
		1.9,
		nil,
	},
	{
		"float/moor", "Ramp.Moment",
		[][2]float64{{1, 12}, {0.5, 2}, {20, 600}, {0, 5000}},
		func(x []num) num {
			even := x[3].mul(x[1]).add(x[2].mul(dec("9.80665")).div(x[0]))
			return even.mul(x[0].sq()).div(of(8))
		},
		func(x []float64) (float64, error) {
			return moor.Ramp{Length: x[0], Width: x[1], Mass: x[2]}.Moment(x[3])
		},
		3.0,
		nil,
	},
}

func many(x []float64) []num {
	out := make([]num, len(x))
	for i := range x {
		out[i] = of(x[i])
	}
	return out
}

// TestReferencesAgain computes the references of elementary forms once more, from the formula
// as its source prints it: all 25 digits are those of testdata/accuracy.csv. Fresh inputs of a
// fixed seed then show whether the largest error there is the largest. A run with -v prints it.
func TestReferencesAgain(t *testing.T) {
	for _, f := range forms {
		t.Run(f.pkg+" "+f.name, func(t *testing.T) {
			data, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(f.pkg), "testdata", "accuracy.csv"))
			if err != nil {
				t.Fatal(err)
			}
			all, err := ulp.Parse(data)
			if err != nil {
				t.Fatal(err)
			}
			points := all[f.name]
			if len(points) < 5 {
				t.Fatalf("%d references", len(points))
			}
			for _, p := range points {
				got := f.exact(many(p.In))
				off := blank().Sub(got.Float, p.Want)
				if limit := blank().Mul(p.Want, big.NewFloat(1e-24)); off.Abs(off).Cmp(limit.Abs(limit)) > 0 {
					t.Errorf("%v: %s, the file has %s", p.In, got.Text('g', 25), p.Want.Text('g', 25))
				}
			}
			if f.most == 0 { // held to what the inputs move it by, which the file has
				return
			}
			r := rand.New(rand.NewPCG(1, 2))
			fresh, worst, at := 10000, 0.0, []float64(nil)
			if testing.Short() {
				fresh = 1000
			}
			for range fresh {
				in := make([]float64, len(f.spans))
				for i, s := range f.spans {
					if in[i] = s[0] + r.Float64()*(s[1]-s[0]); s[0] > 0 {
						in[i] = s[0] * math.Pow(s[1]/s[0], r.Float64())
					}
				}
				x, err := f.call(in)
				if err != nil {
					t.Fatalf("%v: %v", in, err)
				}
				want := f.exact(many(in)).Float
				size, _ := want.Float64()
				if f.size != nil {
					size = f.size(in)
				}
				if off := (ulp.Point{Want: want, Size: size}).Off(x); off > worst {
					worst, at = off, in
				}
			}
			t.Logf("%s: %.2f ulp at %.4g, of %d fresh points", f.name, worst, at, fresh)
			if worst > f.most+0.3 || !testing.Short() && worst < f.most-0.3 { // where products are fused, errors are others
				t.Errorf("%.2f ulp at %v, DEVELOPERS says %.1f", worst, at, f.most)
			}
		})
	}
}

// TestBig holds the functions of many digits to constants from tables: π and atan 1/2 (OEIS
// A000796, A073000), e (A001113), acos 1/3 (A137914) and tanh 1 (A073744), from memory to
// fewer digits where no more are given.
func TestBig(t *testing.T) {
	for name, c := range map[string]struct {
		x    num
		want string
	}{
		"pi":       {pi, "3.14159265358979323846264338327950288419716939937510"},
		"e":        {of(1).exp(), "2.71828182845904523536028747135266249775724709369995"},
		"asin 1/2": {dec("0.5").asin().mul(of(6)), "3.14159265358979323846264338327950288419716939937510"},
		"acos 1/2": {dec("0.5").acos().mul(of(3)), "3.14159265358979323846264338327950288419716939937510"},
		"tanh 1":   {of(1).tanh(), "0.761594155955764888119458282604793590412768597257936"},
	} {
		got := c.x.Text('f', 60)
		if !strings.HasPrefix(got, c.want[:48]) {
			t.Errorf("%s is %s, want %s", name, got, c.want)
		}
	}
	if a := of(1).exp().mul(of(-1).exp()).sub(of(1)); !a.tiny() && a.MantExp(nil) > -prec+20 {
		t.Errorf("e^1 e^-1 - 1 = %s", a.Text('g', 5))
	}
}
