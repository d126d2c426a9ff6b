package measure

import (
	"math"
	"strconv"
)

// A Kind is a kind of quantity: what a text with a unit may mean and how a
// number is printed. The zero Kind is a plain ratio without unit; it prints as
// a bare number and parses nothing.
type Kind int

// The kinds of quantity. Each is held in the SI unit named beside it. Pressure
// and Stress read the same texts; they print in the unit their readers expect.
const (
	Ratio                 Kind = iota
	Length                     // m
	Area                       // m²
	Volume                     // m³
	Mass                       // kg
	Force                      // N
	Pressure                   // Pa; a load on a surface: psf, kPa
	Stress                     // Pa; in a material: psi, MPa
	LineLoad                   // N/m
	Moment                     // N·m
	Density                    // kg/m³
	Speed                      // m/s
	Temperature                // °C, a point
	TemperatureDifference      // °C
	DegreeDays                 // °C·day
	Angle                      // rad
	Time                       // s
	Percent                    // a share: 1 is 100 %
	Count                      // a whole number of things, or a level on a scale; parses nothing
	kinds
)

// A System of units for printing: the builder's feet, inches and pounds, or SI.
type System int

// The two systems.
const (
	US System = iota
	SI
)

// style says how a kind prints in one system: the unit's text and scale and
// the decimals of a number below 100 (larger numbers get one fewer).
type style struct {
	unit     string
	scale    float64
	decimals int
}

// kindInfo holds what is particular to a kind. A reading outside lo..hi (SI) is
// taken for a slip of the pen: bounds far past anything on a lake.
type kindInfo struct {
	name    string
	si      string
	example string // a text that Parse reads
	lo, hi  float64
	style   [2]style // by System; Length and Temperature print by rules of their own
}

var kindTable = [kinds]kindInfo{
	Ratio:    {"ratio", "", "", -1e9, 1e9, [2]style{{"", 1, 3}, {"", 1, 3}}},
	Length:   {"length", "m", "12 ft 6-1/2 in or 3.66 m", -1e5, 1e5, [2]style{{"ft", Foot, 3}, {"m", 1, 3}}},
	Area:     {"area", "m²", "240 sq ft or 22.3 m2", -1e8, 1e8, [2]style{{"ft²", Foot * Foot, 1}, {"m²", 1, 2}}},
	Volume:   {"volume", "m³", "55 gal or 208 L", -1e6, 1e6, [2]style{{"gal", USGallon, 1}, {"L", Litre, 1}}},
	Mass:     {"mass", "kg", "40 lb or 18.1 kg", -1e7, 1e7, [2]style{{"lb", Pound, 1}, {"kg", 1, 1}}},
	Force:    {"force", "N", "900 lbf or 4 kN", -1e9, 1e9, [2]style{{"lbf", PoundForce, 1}, {"N", 1, 1}}},
	Pressure: {"pressure", "Pa", "40 psf or 1.9 kPa", -1e12, 1e12, [2]style{{"psf", PSF, 1}, {"kPa", Kilopascal, 3}}},
	Stress:   {"stress", "Pa", "900 psi or 6.2 MPa", -1e12, 1e12, [2]style{{"psi", PSI, 1}, {"MPa", Megapascal, 3}}},
	LineLoad: {"line load", "N/m", "50 plf or 730 N/m", -1e8, 1e8, [2]style{{"plf", PLF, 1}, {"N/m", 1, 1}}},
	Moment:   {"moment", "N·m", "120 lbf-ft or 160 N-m", -1e9, 1e9, [2]style{{"lbf·ft", PoundForce * Foot, 1}, {"N·m", 1, 1}}},
	Density:  {"density", "kg/m³", "36.7 pcf or 588 kg/m3", -1e5, 1e5, [2]style{{"pcf", PCF, 1}, {"kg/m³", 1, 1}}},
	Speed:    {"speed", "m/s", "25 mph or 40 km/h", -200, 200, [2]style{{"mph", MPH, 1}, {"m/s", 1, 1}}},
	Temperature: {
		"temperature", "°C", "-4 F or -20 C", absoluteZero, 1000,
		[2]style{{"°F", fahrenheitDegree, 1}, {"°C", 1, 1}},
	},
	TemperatureDifference: {
		"temperature difference", "C deg", "18 F deg or 10 C deg", -1000, 1000,
		[2]style{{"F deg", fahrenheitDegree, 1}, {"C deg", 1, 1}},
	},
	DegreeDays: {
		"degree-days", "C-days", "900 F-days or 500 C-days", -1e5, 1e5,
		[2]style{{"F-days", FahrenheitDay, 1}, {"C-days", 1, 1}},
	},
	Angle:   {"angle", "rad", "5 deg", -1000, 1000, [2]style{{"deg", degree, 1}, {"deg", degree, 1}}},
	Time:    {"time", "s", "2 h or 3 weeks", -1e10, 1e10, [2]style{{"h", 3600, 1}, {"h", 3600, 1}}},
	Percent: {"share", "", "85 %", -100, 100, [2]style{{"%", 0.01, 1}, {"%", 0.01, 1}}},
	Count:   {"count", "", "", -1e9, 1e9, [2]style{{"", 1, 0}, {"", 1, 0}}},
}

// info returns the row of a kind; an unknown kind counts as a ratio.
func (k Kind) info() *kindInfo {
	if k < 0 || k >= kinds {
		return &kindTable[Ratio]
	}
	return &kindTable[k]
}

// String returns the kind's name, such as "line load".
func (k Kind) String() string { return k.info().name }

// Unit returns the SI unit in which values of the kind are kept, such as "m" or "N/m"; "1"
// for a ratio, a share and a count.
func (k Kind) Unit() string {
	if u := k.info().si; u != "" {
		return u
	}
	return "1"
}

// reads returns the kind under which the units of k are listed.
func (k Kind) reads() Kind {
	if k == Stress {
		return Pressure
	}
	return k
}

// si prints x in the kind's SI unit with the shortest digits that return it; a time of an
// hour and more in hours, of two days and more in days, to four decimals.
func (k Kind) si(x float64) string {
	if size := math.Abs(x); k == Time && size >= hour && size < math.Inf(1) {
		scale, unit := hour, " h"
		if size >= 2*Day {
			scale, unit = Day, " days"
		}
		return shortest(math.Round(x/scale*1e4)/1e4) + unit
	}
	s := strconv.FormatFloat(x, 'g', -1, 64)
	if u := k.info().si; u != "" {
		s += " " + u
	}
	return s
}

const hour = 3600.0
