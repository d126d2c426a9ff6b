package ice

import (
	"errors"
	"fmt"
	"math"
	"time"

	"example.org/floewright/lumber/measure"
)

// ErrUnfit is the class of error for ice that no rule covers: spring ice, ice
// on a river, thawing ice, a survey that has expired. No thickness mends it.
var ErrUnfit = errors.New("is not covered by any rule that was read")

// Water is what the sheet floats on.
type Water int

// The kinds of water. UnknownWater is the zero value and counts as the worst.
const (
	UnknownWater Water = iota
	River
	Lake
	Sea
)

// String returns "unknown water", "river", "lake" or "sea".
func (w Water) String() string {
	switch w {
	case River:
		return "river"
	case Lake:
		return "lake"
	case Sea:
		return "sea"
	}
	return "unknown water"
}

// Season is the state of the ice in the year.
type Season int

// The seasons. UnknownSeason is the zero value and counts as spring.
const (
	UnknownSeason Season = iota
	Spring               // the snow is gone and the sun is on it, or it is candled, or it has begun to decay
	Winter               // cold, sound ice that still grows
)

// String returns "unknown season", "spring" or "winter".
func (s Season) String() string {
	switch s {
	case Spring:
		return "spring"
	case Winter:
		return "winter"
	}
	return "unknown season"
}

// Cracks is what was found at the pad and on the way to it.
type Cracks int

// The findings about cracks. UnknownCracks is the zero value.
const (
	UnknownCracks Cracks = iota
	NoCracks
	OneCrack       // a crack near the load, the shore's hinge crack among them
	CrossingCracks // cracks that meet
)

// String returns the finding in words.
func (c Cracks) String() string {
	switch c {
	case NoCracks:
		return "no cracks"
	case OneCrack:
		return "a crack"
	case CrossingCracks:
		return "crossing cracks"
	}
	return "cracks not looked for"
}

// Share returns the share of the intact load that ice bears beside such cracks,
// and who says so: a half at a crack's edge, a quarter where cracks cross. It is
// 1 for cracks that were not looked for: they deny the answer instead.
func (c Cracks) Share() (float64, *measure.Source) {
	switch c {
	case OneCrack:
		return 0.5, finland
	case CrossingCracks:
		return 0.25, finland
	}
	return 1, finland
}

// Finding is the outcome of a look.
type Finding int

// The findings. NotLooked is the zero value and counts as the worst.
const (
	NotLooked Finding = iota
	NotFound
	Found
)

// String returns "not looked for", "not found" or "found".
func (f Finding) String() string {
	switch f {
	case NotFound:
		return "not found"
	case Found:
		return "found"
	}
	return "not looked for"
}

// A Sheet is the ice as it was surveyed. Its zero value knows nothing and gets
// no answer.
type Sheet struct {
	Place string // where the survey was made, printed with the verdict
	Holes []Hole // at least six: the four corners and the middle of the pad, and one on the walk from the shore
	Water Water
	Air   []Air   // of the last five days and more
	Age   float64 // s since the first hole was drilled; 0 and NaN are not known

	// Now is the date and hour, by the lake's clock, at which the sheet is asked.
	// With it every day of Air must bear its date, the order does not matter, and
	// the notes name the hour from which the word of the ice is void. The zero time
	// is not known: then the caller vouches that Air is the days right before,
	// newest last, and a day that bears a date takes every answer away.
	Now time.Time

	// Outline is what stands on the pad or is to stand there, its forces aside: if
	// there is any, the corners of the pad must surround it, whatever is asked.
	Outline []Patch

	Depth       float64 // m of water under the ice, the least on the way; 0 and NaN are not known
	SnowDensity float64 // kg/m³ of the snow on the ice, weighed; 0 counts as 400

	Season Season
	Cracks Cracks

	Wet     Finding // open or wet crack, open water or water on the ice, at the shore or on the way
	Inlets  Finding // inlet, outlet, spring, narrows, current, bubbler, pressure ridge, logs or piles in the ice
	Changed Finding // thaw, rain, new snow or another water level since the holes were drilled

	// Scheme and Class are the caller's own choice of a less cautious rule that
	// was named; their zero values are the strictest.
	Scheme Scheme
	Class  *Class
}

// fewest is the least number of holes: the four corners of the pad, its middle,
// and one on the walk from the shore. With fewer there is no answer.
const fewest = 6

// expiry is how long a survey may be used, in seconds.
const expiry = measure.Day

// aged reports whether the age of the holes is known.
func (s Sheet) aged() bool { return s.Age > 0 }

// settled returns the sheet with NaN for what nobody looked for in its holes.
func (s Sheet) settled() Sheet {
	holes := make([]Hole, len(s.Holes))
	for i, h := range s.Holes {
		holes[i] = h.settled()
	}
	s.Holes = holes
	return s
}

// void returns the time from which the survey serves no more, in words: nothing
// where it is not known.
func (s Sheet) void() string {
	if !s.aged() || s.Now.IsZero() || s.Age > rangeAge.Hi {
		return ""
	}
	word := " from "
	if s.Age > expiry {
		word = " since "
	}
	end := s.Now.Add(time.Duration(math.Floor(expiry-s.Age)) * time.Second)
	return "void" + word + end.Format("2006-01-02 15:04")
}

// rangeAge is the age of a survey.
var rangeAge = measure.Range{Kind: measure.Time, Lo: 0, Hi: 1e9, Source: sizeRange}

// class returns the bearing class of the sheet.
func (s Sheet) class() Class {
	if s.Class != nil {
		return *s.Class
	}
	return defaultClass()
}

// choices refuses values that none of the enumerations has.
func (s Sheet) choices() error {
	if s.Scheme < 0 || int(s.Scheme) >= len(schemes) {
		return s.Scheme.unknown()
	}
	for _, c := range []struct {
		field string
		x, hi int
	}{
		{"water", int(s.Water), int(Sea)},
		{"season", int(s.Season), int(Winter)},
		{"cracks", int(s.Cracks), int(CrossingCracks)},
		{"open or wet places", int(s.Wet), int(Found)},
		{"inlets and narrows", int(s.Inlets), int(Found)},
		{"changes since drilling", int(s.Changed), int(Found)},
	} {
		if c.x < 0 || c.x > c.hi {
			return &measure.Error{Field: c.field, Text: fmt.Sprint(c.x), Class: measure.ErrName, Want: "one of the named values"}
		}
	}
	return nil
}

func unknown(field, why string) error {
	return &measure.Error{Field: field, Class: measure.ErrUnknown, Why: why}
}

func unfit(field, what, why string) error {
	return &measure.Error{Field: field, Text: what, Class: ErrUnfit, Why: why}
}
