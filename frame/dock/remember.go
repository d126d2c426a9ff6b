package dock

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// recalled is what people remember of ice-on and ice-out: the dates that are known, and
// what they tell of one winter, or why they tell nothing.
type recalled struct {
	ons, outs   []time.Time
	on, out     season.Guess
	noOn, noOut error
	against     error // what one of the dates contradicts: then none of them counts
}

// remembered returns the dates of a list that are known.
func remembered(of []plan.Remembered) []time.Time {
	var out []time.Time
	for i := range of {
		if t, ok := plan.Time(of[i].When); ok {
			out = append(out, t)
		}
	}
	return out
}

// memory returns what remembered dates tell of the winter that begins in a year. A date
// falls into the winter's first calendar year or the next, as the first remembered one
// does into its own winter. An ice-on of that winter itself is no past one.
func (d *Dock) memory(winter int) recalled {
	m := recalled{ons: remembered(d.plan.Season.Ons), outs: remembered(d.plan.Season.Outs), against: d.contradicts()}
	m.ons = slices.DeleteFunc(m.ons, func(t time.Time) bool { return d.winterOf(t) == winter })
	guessed := func(dates []time.Time) (season.Guess, error) {
		if len(dates) == 0 {
			return season.Guess{}, nil
		}
		if m.against != nil {
			return season.Guess{}, m.against
		}
		return season.FromDates(dates, winter+dates[0].Year()-d.winterOf(dates[0]))
	}
	m.on, m.noOn = guessed(m.ons)
	m.out, m.noOut = guessed(m.outs)
	return m
}

// weigh makes of the table's dates and the remembered ones those that count.
func (s *Season) weigh(m recalled) {
	s.On, s.Out, s.NoOn, s.NoOut = s.Table.On, s.Table.Out, nil, nil
	pick := func(a, b time.Time, late bool) time.Time {
		switch {
		case late && (a.IsZero() || b.IsZero()): // never in so many winters, by one of them
			return time.Time{}
		case a.IsZero() || !b.IsZero() && b.After(a) == late:
			return b
		}
		return a
	}
	if m.noOn == nil && len(m.ons) > 0 && s.Came.IsZero() {
		a, b := s.Table.On, m.on.Span
		s.On = season.Span{P10: pick(a.P10, b.P10, true), P50: pick(a.P50, b.P50, true), P90: pick(a.P90, b.P90, true), Chance: math.Min(a.Chance, b.Chance)}
	}
	if m.noOut == nil && len(m.outs) > 0 {
		a, b := s.Table.Out, m.out.Span
		s.Out = season.Span{P10: pick(a.P10, b.P10, false), P50: pick(a.P50, b.P50, false), P90: pick(a.P90, b.P90, true), Chance: math.Min(a.Chance, b.Chance)}
	}
}

// inWinter returns a remembered date in the winter that begins in a year.
func (d *Dock) inWinter(t time.Time, year int) time.Time { return t.AddDate(year-d.winterOf(t), 0, 0) }

// seenIce reports whether a hole of this winter, drilled by now, had clear ice.
func (d *Dock) seenIce(now time.Time) bool {
	return slices.ContainsFunc(d.plan.Ice.Holes, func(h plan.Hole) bool {
		t, ok := plan.Time(h.When)
		return ok && !t.After(now) && d.winterOf(t) == d.winterOf(now) && h.Clear.Value > 0
	})
}

// doubtOut is why remembered dates of ice-out that tell nothing by themselves take the
// answer from a table too: one of them lies outside of what the table has.
func (d *Dock) doubtOut(s *Season, m recalled) error {
	if m.against != nil {
		return m.against
	}
	if s.Winters == 0 || m.noOut == nil {
		return nil
	}
	if len(m.outs) >= fewestDates { // twice the same, or months apart
		return m.noOut
	}
	for _, seen := range m.outs {
		if t := d.inWinter(seen, s.Year); t.Before(s.Table.Out.P10) || t.After(s.Table.Out.P90) {
			return notKnown("season.ice_outs", fmt.Sprintf("five dates or more: one of these few, %s, lies outside of what the table of temperatures has, %v", seen.Format(dayForm), s.Table.Out))
		}
	}
	return nil
}

// doubtOn is why it is not known that there is ice to work on, where no hole says so.
func (d *Dock) doubtOn(s *Season, m recalled, now time.Time) error {
	switch {
	case m.against != nil:
		return m.against
	case s.NoOn != nil:
		return notKnown("season.ice_ons", "five dates or more, or a hole of this winter with ice in it: nothing says from when on there is ice to work on")
	case s.Winters == 0 || m.noOn == nil:
		return nil
	case len(m.ons) >= fewestDates:
		return m.noOn
	}
	for _, seen := range m.ons {
		if t := d.inWinter(seen, s.Year); t.After(now) && t.After(s.Table.On.P90) {
			return notKnown("season.ice_ons", fmt.Sprintf("five dates or more: one of these few, %s, is later than what the table of temperatures has, %v", seen.Format(dayForm), s.Table.On))
		}
	}
	return nil
}

// fewestDates is how many remembered dates tell anything by themselves ([season.FromDates]).
const fewestDates = 5

// beside says what the table and the remembered dates have, where there are both, how
// far they lie apart, and which of them counts.
func (s *Season) beside(m recalled) []string {
	if s.Winters == 0 {
		return nil
	}
	var out []string
	for _, e := range []struct {
		name, counts    string
		dates           []time.Time
		none            error
		table, recalled season.Span
	}{
		{"ice-on", "the later counts", m.ons, m.noOn, s.Table.On, m.on.Span},
		{"ice-out", "the earlier counts, but the later of the late dates for what stands there", m.outs, m.noOut, s.Table.Out, m.out.Span},
	} {
		n := several(len(e.dates), "remembered date")
		switch {
		case len(e.dates) == 0:
		case e.none != nil:
			out = append(out, fmt.Sprintf("%s of %s %s not counted beside the table of temperatures: %v", n, e.name, isAre(len(e.dates)), e.none))
		default:
			if e.name == "ice-on" && !s.Came.IsZero() {
				out = append(out, fmt.Sprintf("%s%s%v by %s: they count only while no hole of this winter has ice", e.name, three, e.recalled, n))
				continue
			}
			most := 0.0
			for _, two := range [][2]time.Time{{e.table.P10, e.recalled.P10}, {e.table.P50, e.recalled.P50}, {e.table.P90, e.recalled.P90}} {
				if !two[0].IsZero() {
					most = math.Max(most, math.Abs(two[0].Sub(two[1]).Hours()/24))
				}
			}
			text := fmt.Sprintf("%s%s%v by the temperatures of %s, %v by %s; ", e.name, three, e.table, several(s.Winters, "winter"), e.recalled, n)
			if most < 1 {
				text += "they agree"
			} else {
				text += fmt.Sprintf("they differ by up to %s: %s", several(int(most+0.5), "day"), e.counts)
			}
			if most > 7 {
				text += "; ask why: the temperatures of another place, or dates of something else"
			}
			out = append(out, text)
		}
	}
	return out
}

// bar takes from the tasks on ice the days up to tomorrow on which they would begin,
// where the ice of today's holes is short for them or nothing says that it is not.
func (d *Dock) bar(slots []season.Slot, now time.Time) {
	const crossing, standing = "Ice for one crossing", "Ice for the finished dock parked some hours"
	tomorrow := now.Truncate(24*time.Hour).AddDate(0, 0, 1)
	checks := d.onIce()
	for i := range slots {
		s := &slots[i]
		if !(s.Task.Need > 0) || s.Earliest.IsZero() || s.Earliest.After(tomorrow) {
			continue
		}
		for _, c := range checks {
			if c.Verdict() == measure.Holds || !strings.HasPrefix(c.Name, crossing) && !(s.Task.Parked && strings.HasPrefix(c.Name, standing)) {
				continue
			}
			name, _, _ := strings.Cut(c.Name, " (")
			why := fmt.Sprintf("%q has no answer on %s", name, now.Format(dayForm))
			if c.Verdict() == measure.Short {
				why = fmt.Sprintf("%q is short by the holes of %s: %s", name, now.Format(dayForm), c.Numbers(d.system()))
			}
			s.Bar(tomorrow, why)
			break
		}
	}
}

// several says how many there are of what has a plural in s.
func several(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}
