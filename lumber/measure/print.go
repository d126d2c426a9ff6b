package measure

import (
	"math"
	"strconv"
	"strings"
)

// Format returns x, in SI, as text with its unit in the system s.
//
// Lengths print as feet and inches to 1/16 in, or in metres (millimetres below
// a metre) to the millimetre, below a centimetre to its tenth; other kinds print with a fixed number of decimals,
// one fewer from 100 on. Parse returns what was printed to within half of the
// last digit. A NaN or an infinity prints as words, with the unit.
func (k Kind) Format(x float64, s System) string { return k.print(x, s, 0) }

// print prints with some digits more than Format has: of feet and inches, halves of the
// sixteenth, then decimals of the inch.
func (k Kind) print(x float64, s System, more int) string {
	if s != SI {
		s = US
	}
	st := k.info().style[s]
	switch {
	case math.IsNaN(x):
		return "no number" + inUnit(st.unit)
	case math.IsInf(x, 0):
		return "no finite number" + inUnit(st.unit)
	}
	switch {
	case k == Length && s == US && more > 2:
		return decimal(x/Inch, more) + " in"
	case k == Length && s == US:
		return FeetInches(x, 16<<more)
	case k == Length && math.Abs(x) < 0.00995:
		return decimal(x*1000, 1+more) + " mm"
	case k == Length && math.Abs(x) < 0.9995:
		return decimal(x*1000, more) + " mm"
	case k == Length:
		return decimal(x, 3+more) + " m"
	case k == Temperature && s == US:
		return decimal(ToFahrenheit(x), 1+more) + " °F"
	case k == Temperature:
		return decimal(x, 1+more) + " °C"
	case k == Time && math.Abs(x) >= 3*Day:
		return decimal(x/Day, 1+more) + " days"
	case st.unit == "":
		return decimal(x, st.decimals+more)
	}
	v, d := x/st.scale, st.decimals
	if math.Abs(v) >= 100 && d > 0 {
		d--
	}
	return decimal(v, d+more) + " " + st.unit
}

// told prints a quantity of an error: as print does, but with miles for far lengths, the
// seconds and minutes of short times, plain numbers without decimals that say nothing, and
// powers of ten for bounds beyond anything. In SI most are as the error has them.
func (k Kind) told(x float64, s System, more int) string {
	few := func(v float64, unit string) string {
		if more == 0 {
			v = sixDigits(v)
		}
		if unit != "" {
			unit = " " + unit
		}
		return shortest(v) + unit
	}
	st := k.info().style[US]
	switch size := math.Abs(x); {
	case !finite(x):
	case k == Time && size < 60:
		return few(x, "s")
	case k == Time && size < 3600:
		return few(x/60, "min")
	case k == Time || k == Angle || k == Percent:
	case s == SI || k.info().si == "":
		return few(x, k.info().si)
	case k == Length && size >= 1000:
		return few(x/Mile, "mi")
	case k != Length && k != Temperature && size/st.scale >= 1e5:
		return few(x/st.scale, st.unit)
	}
	return k.print(x, s, more)
}

// Upward returns a length that is asked for, in metres, as [Kind.Format] does but
// rounded up, to a quarter of an inch, which a stick in a hole shows, or a millimetre:
// never less than it is, but for a part in a million of that, so that what is exact
// stays. NaN and infinities print as words.
func Upward(x float64, s System) string { return Length.Format(upward(x, s, 0), s) }

// upward rounds a length up to what Upward has, or finer with some digits more.
func upward(x float64, s System, more int) float64 {
	step := Millimetre
	switch {
	case s != SI && more > 2:
		step = Inch / math.Pow10(more)
	case s != SI:
		step = Inch / float64(int(4)<<(2*more)) // what print has, at its finest, or coarser
	case math.Abs(x) < 0.00995:
		step = Millimetre / math.Pow10(1+more)
	default:
		step /= math.Pow10(more)
	}
	return math.Ceil(x/step-1e-6) * step
}

func inUnit(unit string) string {
	if unit == "" {
		return ""
	}
	return " (" + unit + ")"
}

// decimal prints v with d decimals, never as a negative zero, and in powers of
// ten where the digits would not fit a line.
func decimal(v float64, d int) string {
	if math.Abs(v) >= 1e15 {
		return strconv.FormatFloat(v, 'e', 6, 64)
	}
	s := strconv.FormatFloat(v, 'f', d, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// FeetInches returns a length, in metres, as a builder writes it: feet, inches
// and a fraction with the denominator per (1, 2, 4, ... 64; any other counts as
// 16). Rounding carries: 11.99 in to the nearest 1/16 prints as 1 ft.
//
//	0        0 in          0.0254   1 in
//	0.184    7-1/4 in      3.81     12 ft 6 in
//	NaN, ±Inf: words with the unit, as Format
func FeetInches(x float64, per int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return Length.Format(x, US)
	}
	if per < 1 || per > 64 || per&(per-1) != 0 {
		per = 16
	}
	n := math.Round(math.Abs(x) / Inch * float64(per))
	if n >= 1e15 {
		return decimal(x/Foot, 0) + " ft"
	}
	units := int64(n)
	p := int64(per)
	feet, rest := units/(12*p), units%(12*p)
	inches, num := rest/p, rest%p

	var b strings.Builder
	if x < 0 && units > 0 {
		b.WriteByte('-')
	}
	if feet > 0 {
		b.WriteString(strconv.FormatInt(feet, 10) + " ft")
		if rest == 0 {
			return b.String()
		}
		b.WriteByte(' ')
	}
	if inches > 0 || num == 0 || feet > 0 {
		b.WriteString(strconv.FormatInt(inches, 10))
		if num > 0 {
			b.WriteByte('-')
		}
	}
	if num > 0 {
		for num%2 == 0 {
			num, p = num/2, p/2
		}
		b.WriteString(strconv.FormatInt(num, 10) + "/" + strconv.FormatInt(p, 10))
	}
	b.WriteString(" in")
	return b.String()
}
