package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// cutAt cuts a cylinder at the level where the wet volume is v: loose water in
// a drum, or a drum that floats by itself at a given slope. Newton on the
// level, kept in a bracket.
func cutAt(v, s, m, r, l float64) cut {
	hi := m*r + math.Abs(s)*l/2
	lo := -hi
	all := math.Pi * r * r * l
	y := 1 - 2*v/all
	h := hi * y * (0.8 + 0.2*y*y)
	var c cut
	for range 60 {
		c = cutCylinder(h, s, m, r, l)
		over := c.v - v
		if over > 0 {
			lo = h
		} else {
			hi = h
		}
		next := h + over/c.w0
		if !(next > lo && next < hi) {
			next = lo + (hi-lo)/2
		}
		if math.Abs(over) <= 2e-16*all || next == h {
			break
		}
		h = next
	}
	return c
}

// wetAt is cutAt for any body.
func wetAt(b Body, v float64, up r3.Vec) Wet {
	step := math.Cbrt(b.Volume())
	lo, hi := -step, step
	for i := 0; i < 60 && b.Wet(lo, up).Volume < v; i++ {
		lo *= 2
	}
	for i := 0; i < 60 && b.Wet(hi, up).Volume > v; i++ {
		hi *= 2
	}
	var w Wet
	h := lo + (hi-lo)/2
	for range 100 {
		w = b.Wet(h, up)
		over := w.Volume - v
		if over > 0 {
			lo = h
		} else {
			hi = h
		}
		next := h + over/w.Plane
		if !(next > lo && next < hi) {
			next = lo + (hi-lo)/2
		}
		if math.Abs(over) <= 2e-16*b.Volume() || next == h {
			break
		}
		h = next
	}
	return w
}
