package measure

// Gravity is standard gravity in m/s², exact (3rd CGPM, 1901).
const Gravity = 9.80665

// Lengths in metres. The international foot is exact since 1959.
const (
	Inch       = 0.0254      // exact
	Foot       = 12 * Inch   // 0.3048 m
	Yard       = 3 * Foot    // 0.9144 m
	Mile       = 1760 * Yard // 1609.344 m
	Millimetre = 1e-3        // exact
)

// Masses in kilograms.
const (
	Pound = 0.45359237   // avoirdupois, exact since 1959
	ounce = Pound / 16   // avoirdupois
	Ton   = 2000 * Pound // the short ton, 907.18474 kg: the ton of North American ice guides
	Tonne = 1000.0       // the metric ton, t
)

// Forces in newtons.
const (
	PoundForce    = Pound * Gravity   // lbf, 4.4482216152605 N
	Kip           = 1000 * PoundForce // 4448.2216152605 N
	KilogramForce = Gravity           // kgf, 9.80665 N
	Kilonewton    = 1000.0            // kN
)

// Pressures and stresses in pascals, loads on a line in N/m, densities in kg/m³.
const (
	PSF        = PoundForce / (Foot * Foot)   // lbf/ft², 47.88025898033584 Pa
	PSI        = PoundForce / (Inch * Inch)   // lbf/in², 6894.757293168361 Pa
	KSI        = 1000 * PSI                   // kip/in²
	Kilopascal = 1e3                          // kN/m²
	Megapascal = 1e6                          // N/mm²
	PLF        = PoundForce / Foot            // lbf per foot of length, 14.593902937206364 N/m
	PCF        = Pound / (Foot * Foot * Foot) // lb/ft³, a density, 16.018463373960138 kg/m³
)

// Volumes in cubic metres.
const (
	Litre          = 1e-3                     // exact since 1964
	USGallon       = 231 * Inch * Inch * Inch // exact, 3.785411784 L
	ImperialGallon = 4.54609 * Litre          // exact
)

// Speeds in metres per second.
const (
	MPH  = Mile / 3600   // 0.44704 m/s
	KPH  = 1000.0 / 3600 // km/h
	Knot = 1852.0 / 3600 // one nautical mile, 1852 m, an hour
)

// Day is 86 400 s.
const Day = 86400.0

// Temperatures are degrees Celsius. A difference of temperatures, and a sum of
// degree-days, is scaled by a constant; a point on the scale needs [Fahrenheit].
const (
	fahrenheitDegree = 5.0 / 9 // a difference of 1 °F in °C, exact

	FahrenheitDay = fahrenheitDegree // one °F·day in °C·day
)

// zeroFahrenheit is 0 °C in degrees Fahrenheit, exact by the definition of the
// scale (ice point 32, 1 °F = 5/9 K).
const zeroFahrenheit = 32.0

// absoluteZero in degrees Celsius, exact by the definition of the scale.
const absoluteZero = -273.15

// Fahrenheit returns the point f, °F, in °C: (f - 32) × 5/9, by the definition of the
// scale.
func Fahrenheit(f float64) float64 { return (f - zeroFahrenheit) * 5 / 9 }

// ToFahrenheit returns the point c, °C, in °F: c × 9/5 + 32, by the definition of the
// scale.
func ToFahrenheit(c float64) float64 { return c*9/5 + zeroFahrenheit }
