package dock_test

import (
	"math"
	"testing"

	"example.org/floewright/lumber/measure"
)

// The demo plans' rims, and single ones that are quicker to work by hand.
var (
	thinSwim = []string{
		`"rims": { "size": "2x10", "species": "Southern Pine", "grade": "No.1", "incised": "no", "plies": 2 }`,
		`"rims": { "size": "2x8", "species": "Southern Pine", "grade": "No.2", "incised": "no", "plies": 1 }`,
	}
	thinWork = []string{
		`"rims": { "size": "38 mm x 235 mm", "species": "unknown", "plies": 2 }`,
		`"rims": { "size": "38 mm x 184 mm", "species": "unknown", "plies": 1 }`,
		`,
    { "name": "rope ladder", "ladder": "yes", "mass": "6 kg", "along": "6.0 m", "across": "1.2 m", "above": "0 m" }`, ``,
		`"joists": { "size": "38 mm x 235 mm"`, `"joists": { "size": "38 mm x 184 mm"`,
	}
)

// The swim platform's draft under nobody, with single rims, worked by hand from the plan's tape
// and scale by a route that uses no code of the library:
//
//	joists    14 x 29 lb, weighed                                       406.0 lb
//	rims      2 x 24 ft of 2x8, Southern Pine, G 0.55, at 60 %: by the NDS
//	          Supplement 62.4 x 0.55/(1 + 0.009 x 0.55 x 30) x 1.60 = 47.81 pcf
//	          2 x 24 x 10.875/144 ft3 x 47.81                           173.3 lb
//	deck      10 ft x 24 ft x 1.5/12 ft = 30 ft3 x 47.81               1434.4 lb
//	hardware 65, ladder 45, bench 60                                    170.0 lb
//	drums     18 x 22                                                   396.0 lb
//	                                                                   2579.7 lb
//	water at 72 F (22.2 C) 997.7 kg/m3 = 62.28 pcf: 2579.7/62.28/18 = 2.3010 ft3
//	a drum; girth 73 in. is 23.237 in. across: section 424.07 sq in; its 67 gal are
//	67 x 231 = 15477 cu in, a cylinder 36.497 in. long (36.5 by tape);
//	immersed 2.3010 x 1728/36.497 = 108.94 sq in, a share of 0.2569.
//	Segment of that share: with angle t, (t - sin t)/(2 pi) = 0.2569, t = 2.3355,
//	depth r(1 - cos(t/2)) = 11.618 x 0.6075 = 7.06 in. if the dock floated level.
//
// The ladder hangs at the far end and the bench at the near one, so that it trims
// a little and the deepest drum is deeper; the mean is what the hand finds.
func TestSwimPlatformByHand(t *testing.T) {
	rho := 62.4 * 0.55 / (1 + 0.009*0.55*30) * 1.60 // lb/ft3
	weight := 14*29 + 2*24*10.875/144*rho + 30*rho + 65 + 45 + 60 + 18*22
	r := report(t, demoText(t, "swim", thinSwim...))
	c := check(t, r, "Weight of the whole dock")
	if got := c.Value / measure.Pound; math.Abs(got-weight) > 0.05 {
		t.Errorf("weight %.2f lb, by hand %.2f lb", got, weight)
	}
	water := 997.7 / 16.018463 // lb/ft3; Kell 1975 and Tanaka 2001 give 997.72 at 22.2 °C
	girth := 73.0
	section := girth * girth / (4 * math.Pi)
	length := 67 * 231 / section
	if got, want := c.Limit/measure.Pound, 18*section*length/1728*water; math.Abs(got-want) > 0.5 {
		t.Errorf("buoyancy %.1f lb, by hand %.1f lb", got, want)
	}
	share := weight / water / 18 * 1728 / length / section
	lo, hi := 0.0, math.Pi
	for range 60 {
		mid := (lo + hi) / 2
		if (mid-math.Sin(mid))/(2*math.Pi) < share {
			lo = mid
		} else {
			hi = mid
		}
	}
	draft := girth / (2 * math.Pi) * (1 - math.Cos(lo/2))
	got := check(t, r, "Draft of the deepest float with nobody aboard").Value / measure.Inch
	if got < draft-0.01 || got > draft+0.35 {
		t.Errorf("deepest draft %.3f in, level by hand %.3f in", got, draft)
	}
	// Wedged between joists 19 in. apart, the axis lies sqrt(11.618² - 9.5²) =
	// 6.69 in. below them, so that the frame stands 6.69 + 11.62 - 7.06 in. over
	// the water, less the trim.
	clear, radius := 19.0, girth/(2*math.Pi)
	frame := math.Sqrt(radius*radius-clear*clear/4) + radius - draft
	if got := check(t, r, "Water to the frame's underside").Value / measure.Inch; got > frame+0.15 || got < frame-0.5 {
		t.Errorf("frame %.3f in over the water, level by hand %.3f in", got, frame)
	}
}

// The work float by hand: blocks 1.4 m x 1.0 m, so that draft is mass over
// density over the sum of their planes, and small-angle heel is moment over
// weight times GM (ship hydrostatics: BM = I/V), 1 % off at 4 degrees.
func TestWorkFloatByHand(t *testing.T) {
	r := report(t, demoText(t, "work", append(thinWork, `"along": "0.6 m", "across": "1.2 m"`, `"along": "3 m", "across": "1.2 m"`)...))
	// Density at 60 % by the NDS Supplement: Spruce-Pine-Fir G 0.42, the rims'
	// unknown species as heavy as Southern Pine, G 0.55. 17 rows of boards, the last
	// ripped: (2.4 - 16 x 0.003)/0.14 = 16.8 boards.
	density := func(g float64) float64 { return 62.4 * 16.018463 * g / (1 + 0.009*g*30) * 1.6 }
	const inch2 = 0.038 * 0.184
	byHand := density(0.42)*(16.8*6*0.038*0.14+16*2.324*inch2) + density(0.55)*2*6*inch2 + 28 + 55 + 8*24
	mass := check(t, r, "Weight of the whole dock").Value
	if math.Abs(mass-byHand) > 0.02 {
		t.Errorf("weight %.2f kg, by hand %.2f kg", mass, byHand)
	}
	// The joists stand at 0.019 + k 0.4 m, k = 0..14, and 5.981 m: 17 mm past the
	// middle in the mean, and the hardware with them. The trim is that moment over
	// the second moment of the planes, and puts the end blocks deeper.
	const plane, rho = 8 * 1.4 * 1.0, 998.21 // at 20 °C
	middle := (15*0.019 + 0.4*105 + 5.981) / 16
	second := 2 * (2*(1.4*1.4*1.4/12+1.4*2.28*2.28) + 2*(1.4*1.4*1.4/12+1.4*0.76*0.76)) // m4
	slope := (middle - 3) * (16*2.324*inch2*density(0.42) + 28) / rho / second
	even := (mass+20*measure.PSF*2.4*6/measure.Gravity)/(8*1.4*1.0*0.4*rho) + slope*2.28/0.4
	if got := check(t, r, "Most immersed float under").Value; math.Abs(got-even) > 5e-5 { // the load's height adds 5 % to the slope
		t.Errorf("share %.5f, by hand %.5f", got, even)
	}
	if got, want := check(t, r, "Draft of the deepest float with nobody").Value, mass/rho/plane+slope*(2.28+0.7); math.Abs(got-want) > 1e-5 {
		t.Errorf("draft %.5f m, by hand %.5f m", got, want)
	}
	crew, arm := 3*95.0, 1.2-0.15
	all := mass + crew
	v := all / rho
	kb := v / plane / 2                   // above the blocks' bottoms
	inertia := 8 * (1.4/12 + 1.4*0.7*0.7) // m4 about the long axis
	// Heights above the blocks' bottoms: blocks 0.2, joists and rims 0.492,
	// boards 0.603, hardware 0.492, chest 0.4 over a deck at 0.622, crew 1.0.
	joists, rims, boards := 157.0, 64.3, 324.0
	kg := (8*24*0.2 + (joists+rims+28)*0.492 + boards*0.603 + 55*(0.622+0.4) + crew*(0.622+1)) / all
	heel := math.Atan(crew * arm / (all * (kb + inertia/v - kg)))
	if got := check(t, r, "Tilt of the deck").Value; math.Abs(got/heel-1) > 0.02 {
		t.Errorf("tilt %.4f rad, small-angle by hand %.4f rad", got, heel)
	}
}

// The swim platform's worst joist by hand, in pounds and inches: joist 7 hangs on
// the rims, 117 in. between them, and carries half of a 23-1/4 in. and half of a
// 23 in. bay, 23.125 in. of deck.
//
//	deck     47.81 pcf x 1.5/12 ft x 23.125/12 ft    11.52 plf
//	joist    29 lb / 9.75 ft                          2.97 plf
//	400 lb at midspan: M = 14.49 x 9.75^2/8 + 400 x 9.75/4 = 1147 lbf-ft
//	S of 2x8 = 13.14 in3: 1048 psi against Fb' = 925 x 1.15 = 1064 psi (Southern
//	Pine No.2, 8 in. wide: wet exempt below 1150 psi, repetitive)
//	40 psf: V = (77.1 + 14.5) x 9.75/2 = 446 lbf, 1.5 V/A = 61.6 psi
//	40 psf: 5 w L^4/(384 E I) = 0.261 in., E' = 0.9 x 1.4e6 psi
func TestJoistByHand(t *testing.T) {
	r := report(t, demoText(t, "swim", thinSwim...))
	rho := 62.4 * 0.55 / (1 + 0.009*0.55*30) * 1.60
	const span, width = 117.0, 23.125
	dead := (rho*1.5/12*width/12 + 29/9.75) / 12 // lbf/in
	live := 40.0 / 144 * width
	const s, area, inertia, e = 1.5 * 7.25 * 7.25 / 6, 1.5 * 7.25, 1.5 * 7.25 * 7.25 * 7.25 / 12, 0.9 * 1.4e6
	for _, c := range []struct {
		name         string
		value, limit float64
		unit         float64
	}{
		{"bending", (dead*span*span/8 + 400*span/4) / s, 925 * 1.15, measure.PSI},
		{"shear", 1.5 * (dead + live) * span / 2 / area, 175 * 0.97, measure.PSI},
		{"deflection under the passing load", 5 * live * math.Pow(span, 4) / (384 * e * inertia), span / 360, measure.Inch},
		{"deflection with creep", 5 * (live + 2*dead) * math.Pow(span, 4) / (384 * e * inertia), span / 240, measure.Inch},
	} {
		got := check(t, r, "Worst joist, floats standing firm: "+c.name)
		if math.Abs(got.Value/c.unit/c.value-1) > 1e-4 || math.Abs(got.Limit/c.unit/c.limit-1) > 1e-4 {
			t.Errorf("%s: %.5g of %.5g, by hand %.5g of %.5g", c.name, got.Value/c.unit, got.Limit/c.unit, c.value, c.limit)
		}
	}
}
