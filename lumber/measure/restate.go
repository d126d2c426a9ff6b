package measure

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A written unit is what the unit in a text measures.
type written struct {
	kind  Kind
	scale float64 // to SI, without an offset
}

var metric = map[string]written{
	"mm": {Length, Millimetre}, "m": {Length, 1}, "km": {Length, 1000},
	"m²": {Area, 1}, "m2": {Area, 1}, "L": {Volume, Litre},
	"kg": {Mass, 1}, "t": {Mass, Tonne}, "N": {Force, 1}, "kN": {Force, Kilonewton},
	"Pa": {Pressure, 1}, "kPa": {Pressure, Kilopascal}, "MPa": {Stress, Megapascal},
	"N/m": {LineLoad, 1}, "kN/m": {LineLoad, Kilonewton}, "N·m": {Moment, 1}, "J": {Moment, 1},
	"kg/m³": {Density, 1}, "m/s": {Speed, 1}, "km/h": {Speed, KPH}, "°C": {Temperature, 1}, "C": {Temperature, 1},
	"C deg": {TemperatureDifference, 1},
}

var customary = map[string]written{
	"ft": {Length, Foot}, "in": {Length, Inch}, "sq ft": {Area, Foot * Foot},
	"lb": {Mass, Pound}, "lbf": {Force, PoundForce}, "psf": {Pressure, PSF},
	"plf": {LineLoad, PLF}, "mph": {Speed, MPH}, "ft/s": {Speed, Foot}, "°F": {Temperature, fahrenheitDegree},
	"F deg": {TemperatureDifference, fahrenheitDegree},
}

const (
	inSI = `-?\d+(?:\.\d+)?(?:e[+-]?\d+)? (?:mm|cm|m²|m2|m/s|m|km/h|km|kg/m³|kg|kN/m|kN|kPa|MPa|Pa|N·m|N/m|N|J|L|t|C deg|°C|C)`
	inUS = `-?(?:\d+ ft )?(?:\d+-\d+/\d+|\d+/\d+|\d+(?:\.\d+)?) (?:in|sq ft|ft/s|ft|yd|lbf|lb|psf|plf|mph|F deg|°F)`
)

var (
	pair = regexp.MustCompile(`(` + inSI + `) \((` + inUS + `)\)|(` + inUS + `) \((` + inSI + `)\)`)
	from = [2]*regexp.Regexp{US: regexp.MustCompile(inSI), SI: regexp.MustCompile(inUS)}
)

// Restate returns a finished sentence with the quantities of the other system turned
// into those of s: remarks and errors come in SI from packages that know no reader,
// rules quote the units of their land. Words stay, and of a pair in both, "200 mm
// (8 in)", the reader's one.
//
// It reads number and unit with a blank between, as the library writes them. Left
// alone are centimetres, which stand in the names of rows of printed tables alone,
// inches but where "of" or "from" follows ("1 in the middle" has none), what stands in
// quotation marks, since that is a name or somebody's own text, and what readers
// of both systems read: degrees, percent, hours. "10 °C" is a temperature; a fall or a
// rise of one is written as its kind prints it, "10 C deg". The numbers are rounded as [Kind.Format] does,
// whole metres of 5 and more to feet, whole kilograms of 1000 and more to 100 lb.
func Restate(text string, s System) string {
	if s != SI {
		s = US
	}
	if !strings.ContainsAny(text, "0123456789") {
		return text
	}
	var b strings.Builder
	for text != "" {
		open, end := quotation(text)
		b.WriteString(unquoted(text[:open], s) + text[open:end])
		text = text[end:]
	}
	return b.String()
}

// quotation returns where the first quotation of a text begins and ends, both its
// length if it has none. A mark within a word, or one that is never closed, begins none.
func quotation(text string) (open, end int) {
	for i := 0; i < len(text); i++ {
		if text[i] != '"' {
			continue
		}
		if before, _ := utf8.DecodeLastRuneInString(text[:i]); i > 0 && (unicode.IsLetter(before) || unicode.IsDigit(before)) {
			continue
		}
		for k := i + 1; k < len(text); k++ {
			switch text[k] {
			case '\\':
				k++
			case '"':
				return i, k + 1
			}
		}
		break
	}
	return len(text), len(text)
}

// unquoted restates a text without quotations.
func unquoted(text string, s System) string {
	if strings.Contains(text, " (") {
		text = pair.ReplaceAllStringFunc(text, func(both string) string {
			m := pair.FindStringSubmatch(both)
			if s == US {
				return m[2] + m[3]
			}
			return m[1] + m[4]
		})
	}
	var b strings.Builder
	done := 0
	for _, at := range from[s].FindAllStringIndex(text, -1) {
		before, _ := utf8.DecodeLastRuneInString(text[:at[0]])
		after, _ := utf8.DecodeRuneInString(text[at[1]:])
		if unicode.IsLetter(before) || unicode.IsDigit(before) || strings.ContainsRune(".,/-\"", before) || unicode.IsLetter(after) || unicode.IsDigit(after) || strings.ContainsRune("²³·/^", after) {
			continue // a part of something longer
		}
		said, ok := restated(text[at[0]:at[1]], text[at[1]:], s)
		if !ok {
			continue
		}
		b.WriteString(text[done:at[0]] + said)
		done = at[1]
	}
	if done == 0 {
		return text
	}
	return b.String() + text[done:]
}

// restated turns one quantity into the system s. What follows it tells inches from the
// word.
func restated(text, after string, s System) (string, bool) {
	units := metric
	if s == SI {
		units = customary
	}
	digits, name, _ := strings.Cut(text, " ")
	u, ok := units[name]
	x := 0.0
	switch {
	case ok && name == "in" && !strings.HasPrefix(after, " of ") && !strings.HasPrefix(after, " from "):
		return "", false
	case s == SI && strings.HasSuffix(text, " in"): // "1 ft 6 in", "3/8 in of"
		parsed, err := Length.Parse(text)
		if err != nil {
			return "", false
		}
		return Length.Format(parsed, s), true
	case !ok:
		return "", false
	default:
		var err error
		if x, err = strconv.ParseFloat(digits, 64); err != nil {
			return "", false
		}
	}
	if u.kind == Temperature {
		if s == SI {
			x = Fahrenheit(x)
		}
		return Temperature.Format(x, s), true
	}
	round := !strings.ContainsAny(digits, ".e")
	x *= u.scale
	switch {
	case s == US && u.kind == Length && math.Abs(x) >= 1000:
		return plain(x/Mile, 2) + " mi", true
	case s == US && u.kind == Length && round && math.Abs(x) >= 5:
		return plain(x/Foot, 0) + " ft", true
	case s == US && u.kind == Mass && round && math.Abs(x) >= 1000:
		return plain(100*math.Round(x/Pound/100), 0) + " lb", true
	}
	return u.kind.Format(x, s), true
}

func plain(x float64, digits int) string { return strconv.FormatFloat(x, 'f', digits, 64) }

// RestateError returns an error for the eyes of a reader of s, and that unwraps to err;
// nil stays nil. Each [*Error] in it is told from its numbers in the units of s, rounded as
// [Kind.Format] does and never so far that a value reads like the end that it passes; the
// rest of the text is as [Restate] has it.
func RestateError(err error, s System) error {
	if err == nil {
		return nil
	}
	var done *told
	if errors.As(err, &done) && done == err {
		err = done.err
	}
	text := err.Error()
	now := text
	for _, e := range within(err) {
		if said := e.Error(); said != "" {
			now = strings.ReplaceAll(now, said, e.in(s))
		}
	}
	if now = Restate(now, s); now != text {
		return &told{err, now}
	}
	return err
}

// within returns the bad inputs that an error wraps, itself among them.
func within(err error) []*Error {
	switch e := err.(type) {
	case *Error:
		if e == nil {
			return nil
		}
		return []*Error{e}
	case interface{ Unwrap() error }:
		return within(e.Unwrap())
	case interface{ Unwrap() []error }:
		var out []*Error
		for _, of := range e.Unwrap() {
			out = append(out, within(of)...)
		}
		return out
	}
	return nil
}

type told struct {
	err  error
	text string
}

func (t *told) Error() string { return t.text }
func (t *told) Unwrap() error { return t.err }
