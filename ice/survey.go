package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A survey is what a sheet amounts to, whatever the load.
type survey struct {
	thickness float64 // smallest effective thickness, m; NaN where none was measured
	hole      string  // where it was measured
	white     float64 // factor for white ice
	sunk      float64 // m that the sheet lies deeper in a hole than it floats; 0 for none
	sunkAt    string  // that hole
	open      bool    // holes are missing or not fully measured: no number decides
	reasons   []error // against any answer, weightiest first
	air       weather
	rests     []measure.Assumption
}

// survey reads the sheet. The error is for data that no sheet has; what is
// unknown or unfit becomes a reason.
func (s Sheet) survey() (survey, error) {
	v := survey{thickness: math.NaN(), white: 1}
	s = s.settled()
	if err := s.choices(); err != nil {
		return v, err
	}
	if err := s.class().valid(); err != nil {
		return v, err
	}
	if !math.IsNaN(s.Age) {
		if err := rangeAge.Check("age of the holes", s.Age); err != nil {
			return v, err
		}
	}
	if !math.IsNaN(s.Depth) {
		if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: rangeDepth.Hi, Source: sizeRange}).Check("depth of water", s.Depth); err != nil {
			return v, err
		}
	}
	if s.SnowDensity != 0 {
		if err := rangeSnowDensity.Check("density of the snow", s.SnowDensity); err != nil {
			return v, err
		}
	}
	if err := v.drilled(s); err != nil {
		return v, err
	}
	for i, p := range s.Outline {
		p.Force = 1 // none is asked for
		if err := p.check(i, rangeSide.Hi/widest); err != nil {
			return v, err
		}
	}
	v.placed(s)
	v.reasons = append(v.reasons, s.outside(s.Outline)...)
	air, err := readAir(s.Air, s.Now)
	if err != nil {
		return v, err
	}
	v.air = air
	v.water(s)
	v.reasons = append(v.reasons, air.reasons...)
	v.rest("air of the last days", "thaw and cold snaps", air.known)
	v.expired(s)
	v.looked(s)
	v.levels(s)
	return v, nil
}

// rest records an input that the verdict rests on.
func (v *survey) rest(name, text string, known bool) {
	a := measure.Assumption{Name: name, Text: text, Known: measure.Measured}
	if !known {
		a.Known = measure.Unknown
	}
	v.rests = append(v.rests, a)
}

// drilled finds the governing hole.
func (v *survey) drilled(s Sheet) error {
	full := 0
	for i, h := range s.Holes {
		if err := h.check(i); err != nil {
			return err
		}
		if !h.complete() {
			v.reasons = append(v.reasons, unknown(h.label(i), "clear ice, white ice, gap, water level and snow must all be measured"))
			continue
		}
		full++
		t, f, err := s.Scheme.Effective(h)
		if err != nil {
			return err
		}
		if !(t >= v.thickness) {
			v.thickness, v.hole = t, h.label(i)
		}
		v.white = math.Max(v.white, f)
	}
	if full < fewest {
		v.reasons = append([]error{unknown("holes", fmt.Sprintf("the smallest of at least %d holes measured in full governs, %d of %d are", fewest, full, len(s.Holes)))}, v.reasons...)
	}
	v.open = full < fewest || full < len(s.Holes)
	v.rest("ice thickness", "drilled holes, the smallest governs", !v.open)
	return nil
}

// water bars everything but a lake in winter.
func (v *survey) water(s Sheet) {
	for _, err := range []error{s.Water.bar(), s.Season.bar()} {
		if err != nil {
			v.reasons = append(v.reasons, err)
		}
	}
	v.rest("water", s.Water.String(), s.Water != UnknownWater)
	v.rest("season", s.Season.String(), s.Season != UnknownSeason)
}

// expired bars a survey older than a day or changed since.
func (v *survey) expired(s Sheet) {
	switch {
	case !s.aged():
		v.reasons = append(v.reasons, unknown("age of the holes", "a survey serves for 24 hours"))
	case s.Age > expiry:
		v.reasons = append(v.reasons, unfit("age of the holes", "a survey older than 24 hours", "drill again"))
	}
	v.rest("age of the holes", "hours since drilling", s.aged())
	v.look("changes since drilling", s.Changed, "a survey with a thaw, rain, snow or another water level since", "drill again")
}

// looked bars what was not looked for, and what was found that no rule covers.
func (v *survey) looked(s Sheet) {
	if s.Cracks == UnknownCracks {
		v.reasons = append(v.reasons, unknown("cracks", "a crack halves the load, crossing cracks quarter it ("+finland.String()+")"))
	}
	v.rest("cracks", s.Cracks.String(), s.Cracks != UnknownCracks)
	v.look("open or wet places", s.Wet, "ice with an open or wet crack, open water or water on it", "at the shore or on the way")
	v.look("inlets and narrows", s.Inlets, inletsWhat, inletsWhy)
}

func (v *survey) look(field string, f Finding, what, why string) {
	switch f {
	case NotFound:
	case Found:
		v.reasons = append(v.reasons, unfit(field, what, why))
	default:
		v.reasons = append(v.reasons, unknown(field, "not looked for"))
	}
	v.rest(field, f.String(), f != NotLooked)
}

// Densities of ice and snow in kg/m³ that tell whether a sheet floats freely.
const (
	freshWater = 1000.0
	clearIce   = 917.0 // clear lake ice
	slushIce   = 875.0 // white ice from slush, the lightest
	wetSnow    = 400.0 // packed or damp snow: our choice, the cautious side of dry lake snow
	levelError = 0.02  // m, how well a level in a hole is read: our choice
)

// highest is the most in m that the water may stand below the top of free ice:
// h (1 - ρi/ρw) of the lightest ice, read too low. Clear ice alone is counted.
func (h Hole) highest() float64 { return h.Clear*(1-slushIce/freshWater) + levelError }

// highest is that of the hole with the thinnest ice.
func (s Sheet) highest() float64 {
	least := math.Inf(1)
	for _, h := range s.Holes {
		if !(h.highest() >= least) { // NaN passes on
			least = h.highest()
		}
	}
	return least
}

// low bars a sheet that lies deeper in the water than its clear ice and its snow press
// it, beyond what a load that stands there is allowed to: the ice is thinner
// than it was read, or something pushes it under.
func (v *survey) low(allowed float64) {
	if v.sunk > allowed {
		v.reasons = append(v.reasons, unfit("water level", "ice that lies deeper than it floats", "at "+v.sunkAt+" the water stands "+
			measure.Length.Format(v.sunk+levelError, measure.SI)+" nearer to the top than so much ice and snow lets it: the thickness is read wrong, or something presses the sheet down; what stands there counts with the load"))
	}
}

// levels bars ice whose water level in the hole says that it is flooded or
// does not rest on the water, and ice that its snow may have pushed under; how deep the
// sheet lies is for low.
func (v *survey) levels(s Sheet) {
	flooded, hangs, snow := false, false, false
	for i, h := range s.Holes {
		flooded = flooded || h.Water <= 0
		hangs = hangs || h.Water > h.highest()
		snow = snow || s.snowDensity()*h.Snow > (freshWater-clearIce)*h.Clear
		least := (1-clearIce/freshWater)*h.Clear - s.snowDensity()/freshWater*h.Snow - levelError
		if deep := least - h.Water; h.spot() != AtDock && deep > v.sunk {
			v.sunk, v.sunkAt = deep, h.label(i)
		}
	}
	if flooded {
		v.reasons = append(v.reasons, unfit("water level", "flooded ice", "water stands at the top of the ice in a hole"))
	}
	if hangs {
		v.reasons = append(v.reasons, unfit("water level", "ice that does not rest on the water", "the level fell below it ("+levelDrop.String()+")"))
	}
	if snow {
		v.reasons = append(v.reasons, unfit("snow", "ice under so much snow", fmt.Sprintf("counted as %.0f kg/m³ it uses up the freeboard: expect water and slush under it", s.snowDensity())))
	}
}
