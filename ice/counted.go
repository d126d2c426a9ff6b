package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// What the verdicts say of air and cracks, in words: the checks, their factors and
// [Counted] take them from here.
const (
	thawFactor = 3.0
	thawWhy    = "double to triple thickness until several days of frost; triple is taken"

	inletsWhat = "ice near an inlet, outlet, spring, narrows, ridge, log or pile"
	inletsWhy  = "it is thinner than the holes elsewhere show"
)

var (
	mildAir = fmt.Sprintf("one of the %d days before yesterday reached 0 °C, its mean below that", days-1)
	warmAir = fmt.Sprintf("0 °C and more yesterday or today, or as the mean of one of the last %d days", days)
	snapAir = "a high or a low that fell by " + measure.TemperatureDifference.Format(snap, measure.SI) + " and more from one day to the next, to today, yesterday or the day before"
)

// cracksWords says what dry cracks ask for.
func cracksWords() string {
	one, _ := OneCrack.Share()
	cross, _ := CrossingCracks.Share()
	return fmt.Sprintf("a dry crack near the load asks for %.2f times the thickness, dry cracks that cross for %.2g times",
		math.Ceil(100/math.Sqrt(one))/100, 1/math.Sqrt(cross))
}

// Counted returns what the verdicts of a [Sheet] make of air and cracks, beside
// the thickness of its holes, in words for whoever reads a thickness of [Sheet.Required]
// off a card: which thaw the factor of a thaw is for, and what takes every answer away.
func Counted() []Caution {
	return []Caution{
		{"stay off, however thick the ice, after " + warmAir, "Minnesota DNR; US Army TM 5-852-1", minnesotaThaw.Status},
		{"so too after " + snapAir, "CCOHS, brittle for 24 hours", ccohs.Status},
		{fmt.Sprintf("after a thaw, %.0f times the thickness: %s", thawFactor, mildAir), "Lake Champlain Committee", champlain.Status},
		{cracksWords() + "; wet or working: none", "Finnish Meteorological Institute", finland.Status},
	}
}

// Barred returns what takes every answer away from a sheet wherever and whenever its
// holes are drilled: water that is no lake, ice in spring, an inlet and what else
// thins it from below. It is nil for a lake; a season that nobody named yet, and places that
// nobody looked at, do not count here.
func (s Sheet) Barred() error {
	switch {
	case s.Water.bar() != nil:
		return s.Water.bar()
	case s.Season == Spring:
		return s.Season.bar()
	case s.Inlets == Found:
		return unfit("inlets and narrows", inletsWhat, inletsWhy)
	}
	return nil
}

// bar returns why ice on such water has no rule, nil for a lake.
func (w Water) bar() error {
	switch w {
	case Lake:
		return nil
	case River:
		return unfit("water", "river ice", "current thins it from below between one hole and the next")
	case Sea:
		return unfit("water", "sea ice", "the rules are for ice of fresh water; salt, tide and swell weaken it")
	}
	return unknown("water", "lake or river was not said; it counts as a river")
}

// bar returns why ice of such a season has no rule, nil for winter.
func (s Season) bar() error {
	switch s {
	case Winter:
		return nil
	case Spring:
		return unfit("season", "spring ice", "30 cm of it may not hold a person ("+norway.String()+")")
	}
	return unknown("season", "winter or spring was not said; it counts as spring")
}
