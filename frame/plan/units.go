package plan

import (
	"math"
	"strconv"
	"strings"

	"example.org/floewright/lumber/measure"
)

// In returns the entry with what it means, accepts and stands in for it in the units
// of one system. Ends of what is accepted are rounded inward: a value that the entry
// names is accepted.
func (e Entry) In(s measure.System) Entry {
	e.Means = measure.Restate(e.Means, s)
	if e.span.lo != "" {
		e.Accepts = e.before + e.span.words(s)
		e.Default = turned(e.Default, s)
	}
	var others []string
	for _, o := range e.Plausible {
		others = append(others, turned(o, s))
	}
	e.Plausible = others
	return e
}

// turned returns a quantity in the units of a system, as it is if it has them.
func turned(text string, s measure.System) string {
	return strings.TrimSuffix(measure.Restate(text+" of ", s), " of ")
}

// end returns one end of a span in the units of a system, rounded to few digits.
func (s span) end(text string, of measure.System, round func(float64) float64) string {
	if turned(text, of) == text {
		return text
	}
	x, err := s.kind.Parse(text)
	if err != nil {
		return text
	}
	_, unit, _ := strings.Cut(s.kind.Format(x, of), " ")
	if s.kind == measure.Length && of == measure.US {
		step := measure.Inch / 16
		switch size := math.Abs(x); {
		case size >= 3*measure.Mile:
			return strconv.FormatFloat(round(x/measure.Mile), 'f', 0, 64) + " mi"
		case size >= 3*measure.Foot:
			step = measure.Foot
		case size >= measure.Inch:
			step = measure.Inch / 4
		}
		return measure.FeetInches(step*round(x/step), 16)
	}
	switch {
	case s.kind == measure.Temperature:
		if of == measure.US {
			x = measure.ToFahrenheit(x)
		}
		tie := 1e-9 * math.Copysign(1, round(0.5)-0.5) // 32 by a hair is 32
		return strconv.FormatFloat(round(x-tie), 'f', 0, 64) + " " + unit
	case x == 0:
		return "0 " + unit
	}
	one, err := s.kind.Parse("1 " + strings.NewReplacer("²", "2", "³", "3", "·", "-").Replace(unit))
	if err != nil {
		return text
	}
	v := x / one
	step := math.Pow10(int(math.Floor(math.Log10(math.Abs(v)))) - 2) // three digits
	v = step * round(v/step)
	return strconv.FormatFloat(v, 'f', max(0, -int(math.Floor(math.Log10(step)+0.5))), 64) + " " + unit
}

// article puts the article before a word.
func article(word string) string {
	if word != "" && strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}
