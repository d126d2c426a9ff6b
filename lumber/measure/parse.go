package measure

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// A unit is one unit a text may bear: its names, and its size and zero point
// in SI.
type unit struct {
	kind   Kind
	names  string // separated by spaces; a name's own spaces are written _
	scale  float64
	offset float64 // in SI, added after scaling
}

var units = []unit{
	{Length, `in inch inches "`, Inch, 0},
	{Length, `ft foot feet '`, Foot, 0},
	{Length, "yd yard yards", Yard, 0},
	{Length, "mi mile miles", Mile, 0},
	{Length, "mm millimetre millimetres millimeter millimeters", Millimetre, 0},
	{Length, "cm centimetre centimetres centimeter centimeters", 10 * Millimetre, 0},
	{Length, "m metre metres meter meters", 1, 0},
	{Length, "km kilometre kilometres kilometer kilometers", 1000, 0},

	{Area, "ft2 sq_ft sf square_feet square_foot", Foot * Foot, 0},
	{Area, "in2 sq_in square_inches", Inch * Inch, 0},
	{Area, "m2 sq_m square_metres square_meters", 1, 0},

	{Volume, "gal gals gallon gallons us_gal us_gallon us_gallons gal_us gal_(us)", USGallon, 0},
	{Volume, "imp_gal imperial_gal imperial_gallon imperial_gallons gal_imp gal_(imp)", ImperialGallon, 0},
	{Volume, "l litre litres liter liters", Litre, 0},
	{Volume, "ml millilitre millilitres milliliter milliliters", Litre / 1000, 0},
	{Volume, "ft3 cu_ft cubic_feet cubic_foot cf", Foot * Foot * Foot, 0},
	{Volume, "m3 cu_m cubic_metres cubic_meters", 1, 0},

	{Mass, "lb lbs pound pounds", Pound, 0},
	{Mass, "oz ounce ounces", ounce, 0},
	{Mass, "ton tons short_ton short_tons", Ton, 0},
	{Mass, "t tonne tonnes metric_ton metric_tons", Tonne, 0},
	{Mass, "kg kilogram kilograms", 1, 0},
	{Mass, "g gram grams", 1e-3, 0},

	{Force, "lbf pounds-force pound-force", PoundForce, 0},
	{Force, "kip kips", Kip, 0},
	{Force, "kgf", KilogramForce, 0},
	{Force, "N newton newtons", 1, 0},
	{Force, "kN kilonewton kilonewtons", Kilonewton, 0},

	{Pressure, "psf lb/ft2 lbf/ft2 lb/sq_ft lbs/ft2 lbs/sq_ft", PSF, 0},
	{Pressure, "psi lb/in2 lbf/in2 lb/sq_in", PSI, 0},
	{Pressure, "ksi", KSI, 0},
	{Pressure, "kg/m2 kgf/m2", KilogramForce, 0},
	{Pressure, "Pa N/m2", 1, 0},
	{Pressure, "kPa kN/m2", Kilopascal, 0},
	{Pressure, "MPa N/mm2", Megapascal, 0},
	{Pressure, "mPa", 1e-3, 0}, // listed so that it is never taken for MPa
	{Pressure, "GPa", 1e9, 0},

	{LineLoad, "plf lb/ft lbf/ft lbs/ft", PLF, 0},
	{LineLoad, "kg/m kgf/m", KilogramForce, 0},
	{LineLoad, "N/m", 1, 0},
	{LineLoad, "kN/m", Kilonewton, 0},

	{Moment, "lbf-ft lb-ft ft-lb ft-lbf ft-lbs", PoundForce * Foot, 0},
	{Moment, "lbf-in lb-in in-lb in-lbf in-lbs", PoundForce * Inch, 0},
	{Moment, "N-m Nm", 1, 0},
	{Moment, "kN-m kNm", Kilonewton, 0},

	{Density, "pcf lb/ft3 lbs/ft3 lb/cu_ft lbs/cu_ft", PCF, 0},
	{Density, "kg/m3", 1, 0},

	{Speed, "mph mi/h miles/h", MPH, 0},
	{Speed, "km/h kph kmh", KPH, 0},
	{Speed, "knot knots kn kt kts", Knot, 0},
	{Speed, "m/s", 1, 0},
	{Speed, "ft/s fps", Foot, 0},

	{Temperature, "F degF deg_F", fahrenheitDegree, -zeroFahrenheit * fahrenheitDegree},
	{Temperature, "C degC deg_C", 1, 0},
	{Temperature, "K", 1, absoluteZero},

	{TemperatureDifference, "F degF deg_F F_deg", fahrenheitDegree, 0},
	{TemperatureDifference, "C degC deg_C C_deg K", 1, 0},

	{DegreeDays, "F-days F-day F_days F_day degF-d degF-day degF-days F-d", FahrenheitDay, 0},
	{DegreeDays, "C-days C-day C_days C_day degC-d degC-day degC-days C-d K-d", 1, 0},

	{Angle, "deg degree degrees", degree, 0},
	{Angle, "rad radian radians", 1, 0},

	{Time, "s sec second seconds", 1, 0},
	{Time, "min minute minutes", 60, 0},
	{Time, "h hr hrs hour hours", 3600, 0},
	{Time, "d day days", Day, 0},
	{Time, "wk week weeks", 7 * Day, 0},

	{Percent, "% percent pct", 0.01, 0},
}

const degree = math.Pi / 180

// exact finds a unit by its name as written, folded by its lower-case name
// where that is unambiguous within the kind.
var exact, folded = indexUnits()

func indexUnits() (exact, folded [kinds]map[string]*unit) {
	for k := range exact {
		exact[k], folded[k] = map[string]*unit{}, map[string]*unit{}
	}
	for i := range units {
		u := &units[i]
		for _, name := range strings.Fields(u.names) {
			name = strings.ReplaceAll(name, "_", " ")
			exact[u.kind][name] = u
			low := strings.ToLower(name)
			if other, taken := folded[u.kind][low]; taken && other != u {
				folded[u.kind][low] = nil // ambiguous: must be written exactly
				continue
			}
			folded[u.kind][low] = u
		}
	}
	return exact, folded
}

// find returns the unit of kind k that bears the name, or nil.
func find(k Kind, name string) *unit {
	if u := exact[k][name]; u != nil {
		return u
	}
	return folded[k][strings.ToLower(name)]
}

const longest = 80 // characters of a quantity; more is no quantity

// spelling puts what builders and their keyboards write into one form.
var spelling = strings.NewReplacer(
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⁄", "/",
	"''", `"`, "′′", `"`, "’’", `"`, "″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "‘", "'",
	"−", "-", "–", "-", "—", "-", "\u00a0", " ", "\u2009", " ", "\u202f", " ",
	"º", "°", "²", "2", "³", "3", "·", "-", "×", "x",
)

var (
	number = regexp.MustCompile(`^(?:(\d+)[ -]+)?(\d+)/(\d+)|^(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`)
	spaces = regexp.MustCompile(`\s+`)
	// abbreviation is a letter and the full stop that shortens it: "ft."
	abbreviation = regexp.MustCompile(`([A-Za-z])\.`)
	// larger splits a compound quantity behind its larger unit.
	larger = regexp.MustCompile(`(?i)^(feet|foot|ft\.?|'|lbs?\.?)(?:\s*-)?\s*([\d.].*)$`)
)

// Parse reads a quantity as a builder writes it and returns it in SI.
//
//	Length       12 ft 6 in   12'-6 1/2"   7-1/4 in   3.66 m
//	Volume       55 gal       208 L
//	Pressure     40 psf       1.9 kPa
//	Temperature  -4 F         -20 °C
//
// The unit is required and must be one of the kind. A gallon is the US gallon
// unless "imp gal" is written, a ton the short ton; kg/m² and lb/ft² as a
// Pressure mean the weight of that mass. A decimal comma and thousands
// separators are refused, since one reader's 3,660 is another's 3.66.
//
// The error is an [*Error]: of class [ErrSyntax] if the text is no quantity of
// this kind, of class [ErrRange] if it is beyond anything on a lake.
func (k Kind) Parse(text string) (float64, error) {
	if k <= Ratio || k >= Count {
		return math.NaN(), k.syntax(text, article(k.String())+" has no unit to read")
	}
	s := strings.TrimSpace(spaces.ReplaceAllString(spelling.Replace(text), " "))
	switch {
	case s == "":
		return math.NaN(), k.syntax(text, "it is empty")
	case len(text) > longest:
		return math.NaN(), k.syntax(text[:longest], "it is too long")
	}
	negative := s[0] == '-'
	if s[0] == '-' || s[0] == '+' {
		s = strings.TrimSpace(s[1:])
		if s != "" && (s[0] == '-' || s[0] == '+') {
			return math.NaN(), k.syntax(text, "it has two signs")
		}
	}
	x, rest, why := leading(s)
	if why != "" {
		return math.NaN(), k.syntax(text, why)
	}
	x, why = k.scaled(x, rest)
	if why != "" {
		return math.NaN(), k.syntax(text, why)
	}
	if negative {
		x = k.negated(x, rest)
	}
	if r := (Range{Kind: k, Lo: k.info().lo, Hi: k.info().hi}); !r.Has(x) {
		return math.NaN(), &Error{Text: text, Kind: k, Value: x, Range: r, Class: ErrRange}
	}
	return x + 0, nil
}

// scaled turns the number x and the unit text behind it into SI.
func (k Kind) scaled(x float64, rest string) (float64, string) {
	name := unitName(rest)
	if name == "" {
		return 0, "it has no unit"
	}
	base := k.reads()
	if u := find(base, name); u != nil {
		return x*u.scale + u.offset, ""
	}
	if m := larger.FindStringSubmatch(rest); m != nil {
		if u := find(base, unitName(m[1])); u != nil {
			return compound(u, x, m[2])
		}
	}
	return 0, wrongUnit(base, name)
}

// compound adds the smaller part of feet and inches, or pounds and ounces.
func compound(u *unit, x float64, rest string) (float64, string) {
	smaller, per := `"`, 12.0
	if u.kind == Mass {
		smaller, per = "oz", 16
	}
	if x != math.Trunc(x) {
		return 0, "the larger part of a compound must be whole"
	}
	y, rest, why := leading(rest)
	if why != "" {
		return 0, why
	}
	small := find(u.kind, smaller)
	switch name := unitName(rest); {
	case name == "":
		return 0, "its last number has no unit"
	case find(u.kind, name) != small:
		return 0, strconv.Quote(name) + " does not follow " + strings.Fields(u.names)[0]
	case y >= per:
		return 0, "its smaller part makes a whole larger one"
	}
	return x*u.scale + y*small.scale, ""
}

// negated returns the quantity with its number negated: a temperature's sign
// belongs to the number, not to the scale's zero.
func (k Kind) negated(x float64, rest string) float64 {
	if u := find(k.reads(), unitName(rest)); u != nil {
		return 2*u.offset - x
	}
	return -x
}

// leading splits a number off the front of s: whole, decimal, fraction or mixed.
func leading(s string) (x float64, rest, why string) {
	m := number.FindStringSubmatch(s)
	if m == nil {
		return 0, "", "it does not begin with a number"
	}
	rest = strings.TrimSpace(s[len(m[0]):])
	if strings.HasPrefix(rest, ",") {
		return 0, "", "it has a comma; write a decimal point and no thousands separator"
	}
	if m[3] == "" {
		x, err := strconv.ParseFloat(m[0], 64)
		if err != nil {
			return 0, "", "its number is too large"
		}
		return x, rest, ""
	}
	num, err1 := strconv.ParseFloat(m[2], 64)
	den, err2 := strconv.ParseFloat(m[3], 64)
	if err1 != nil || err2 != nil || !(den > 0) {
		return 0, "", "its fraction is not a number"
	}
	if m[1] == "" {
		return num / den, rest, ""
	}
	whole, err := strconv.ParseFloat(m[1], 64)
	if err != nil || !(num < den) {
		return 0, "", "its fraction is not a proper one"
	}
	return whole + num/den, rest, ""
}

// unitName brings a unit's text into the form of the table.
func unitName(s string) string {
	s = abbreviation.ReplaceAllString(s, "$1")
	s = strings.ReplaceAll(s, "^", "")
	s = strings.ReplaceAll(s, "°", "deg")
	return strings.TrimSpace(s)
}

// wrongUnit says whether the name is a unit of another kind or of none.
func wrongUnit(k Kind, name string) string {
	for other := range kinds {
		if other != k && find(other, name) != nil {
			return strconv.Quote(name) + " is a unit of " + other.String()
		}
	}
	return strconv.Quote(name) + " is no unit known here"
}

func (k Kind) syntax(text, why string) error {
	return &Error{
		Text: text, Kind: k, Value: math.NaN(), Why: why,
		Want: article(k.String()) + " with its unit, such as " + k.info().example, Class: ErrSyntax,
	}
}

// article puts the article before a word.
func article(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}
