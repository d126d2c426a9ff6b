package ulp_test

import (
	"math"
	"testing"

	"example.org/floewright/internal/ulp"
)

func TestUnit(t *testing.T) {
	for _, x := range []float64{1, 1.5, math.Nextafter(2, 0), 2, 3e-300, 0x1p-1022, 1e300, 5e-324} {
		if got, want := ulp.Unit(x), math.Nextafter(x, math.Inf(1))-x; got != want {
			t.Errorf("a unit at %g is %g, want %g", x, got, want)
		}
		if ulp.Unit(-x) != ulp.Unit(x) {
			t.Errorf("the sign of %g counts", x)
		}
	}
}

func TestOff(t *testing.T) {
	points, err := ulp.Parse([]byte("# a third, in 25 digits\nthird,3,0.3333333333333333333333333\nnone,1;2,0,8\n"))
	if err != nil {
		t.Fatal(err)
	}
	p := points["third"][0]
	if off := p.Off(1. / 3); math.Abs(off-1./3) > 1e-6 { // 1/3 rounds down by a third of a unit
		t.Errorf("1/3 is %g units off", off)
	}
	if off := p.Off(math.Nextafter(1./3, 1)); math.Abs(off-2./3) > 1e-6 {
		t.Errorf("the next number is %g units off", off)
	}
	if !math.IsInf(p.Off(math.NaN()), 1) || !math.IsInf(p.Off(math.Inf(-1)), 1) {
		t.Error("what is no number is not infinitely off")
	}
	if off := points["none"][0].Off(0x1p-49); off != 1 {
		t.Errorf("at the size 8, 2⁻⁴⁹ is %g units, want 1", off)
	}
	if in := points["none"][0].In; len(in) != 2 || in[1] != 2 {
		t.Errorf("inputs %v", in)
	}
}

func TestParseRefuses(t *testing.T) {
	for _, s := range []string{"a,1", "a,1,2,3,4", "a,x,2", "a,1,x", "a,1,2,x", "a,1,0", "a,1,0,0"} {
		if _, err := ulp.Parse([]byte(s)); err == nil {
			t.Errorf("%q is read", s)
		}
	}
}
