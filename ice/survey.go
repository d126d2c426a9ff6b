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
	switch s.Water {
	case Lake:
	case River:
		v.reasons = append(v.reasons, unfit("water", "river ice", "current thins it from below between one hole and the next"))
	case Sea:
		v.reasons = append(v.reasons, unfit("water", "sea ice", "the rules are for ice of fresh water; salt, tide and swell weaken it"))
	default:
		v.reasons = append(v.reasons, unknown("water", "lake or river was not said; it counts as a river"))
	}
	v.rest("water", s.Water.String(), s.Water != UnknownWater)
	switch s.Season {
	case Winter:
	case Spring:
		v.reasons = append(v.reasons, unfit("season", "spring ice", "30 cm of it may not hold a person ("+norway.String()+")"))
	default:
		v.reasons = append(v.reasons, unknown("season", "winter or spring was not said; it counts as spring"))
	}
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
	v.look("inlets and narrows", s.Inlets, "ice near an inlet, outlet, spring, narrows, ridge, log or pile", "it is thinner than the holes elsewhere show")
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

// levels bars ice whose water level in the hole says that it is flooded or
// does not rest on the water, and ice that its snow may have pushed under.
// Freeboard of free ice: h (1 - ρi/ρw); clear ice alone is counted.
func (v *survey) levels(s Sheet) {
	flooded, hangs, snow := false, false, false
	for _, h := range s.Holes {
		flooded = flooded || h.Water <= 0
		hangs = hangs || h.Water > h.Clear*(1-slushIce/freshWater)+levelError
		snow = snow || s.snowDensity()*h.Snow > (freshWater-clearIce)*h.Clear
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
