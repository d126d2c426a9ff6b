package ice

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/floewright/lumber/measure"
)

// Air is one day's highest and lowest temperature of the air in °C; NaN is not
// known.
type Air struct {
	Date      time.Time // the day, by the lake's calendar; needed where Sheet.Now is given
	High, Low float64
}

// mean returns the day's mean as weather services make it of the two.
func (a Air) mean() float64 { return (a.High + a.Low) / 2 }

// days is how many days of air a verdict rests on, the newest last. The advice
// is to wait "until several days below freezing"; more than the "few" of the
// same advice for warming, hence five: our choice.
const days = 5

// snap is the fall of the daily high or low, in °C from one day to the next,
// that counts as the sudden drop after which ice is brittle for 24 h. The
// source gives no figure: our choice.
const snap = 10.0

// A weather is what the air of the last days means for the sheet.
type weather struct {
	factor  float64 // on the thickness required
	by      *measure.Source
	why     string
	reasons []error // against any answer
	known   bool
}

// rangeAir is that of the air over a lake, as a plan takes it.
var rangeAir = measure.Range{Kind: measure.Temperature, Lo: -60, Hi: 50, Source: sizeRange}

// readAir applies the thaw rules. Only a high and a low are known of each day,
// so that a high at or above freezing counts as six hours of thaw and more.
//
//	newest day reaches 0 °C          no answer (6 h of 24: Minnesota DNR)
//	a day's mean reaches 0 °C        no answer (24 h: Minnesota DNR; TM 5-852-1)
//	an earlier day reaches 0 °C      thickness times 3 (Lake Champlain Committee)
//	a sudden drop                    no answer (CCOHS: brittle for 24 h)
//
// A part of today counts as one more newest day. [Counted] has the same in words.
func readAir(air []Air, now time.Time) (weather, error) {
	w := weather{factor: 1, known: true}
	for i, a := range air {
		for _, t := range []struct {
			name string
			x    float64
		}{{"high", a.High}, {"low", a.Low}} {
			if math.IsNaN(t.x) {
				continue
			}
			if err := rangeAir.Check(fmt.Sprintf("air, day %d of %d, %s", i+1, len(air), t.name), t.x); err != nil {
				return w, err
			}
		}
		if a.High < a.Low {
			return w, &measure.Error{
				Field: fmt.Sprintf("air, day %d of %d, high", i+1, len(air)), Kind: measure.Temperature, Value: a.High,
				Range: measure.Range{Kind: measure.Temperature, Lo: a.Low, Hi: rangeAir.Hi}, Class: measure.ErrRange,
			}
		}
	}
	air, whole := w.recent(air, now)
	w.thaw(air, whole)
	w.drop(air, whole)
	return w, nil
}

// recent returns the days that count, oldest first, and how many of them are
// over. What is amiss with them is a reason against any answer.
func (w *weather) recent(air []Air, now time.Time) (out []Air, whole int) {
	bar := func(err error) {
		w.known = false
		w.reasons = append(w.reasons, err)
	}
	if now.IsZero() {
		for _, a := range air {
			if !a.Date.IsZero() {
				bar(unknown("now", "the days of the air bear dates: they count back from the day on which this is asked"))
				return air, len(air)
			}
		}
		if len(air) < days {
			bar(unknown("air", fmt.Sprintf("the high and low of each of the last %d days are needed, %d are given", days, len(air))))
			return air, len(air)
		}
		return air[len(air)-days:], days
	}
	first := now.AddDate(0, 0, -days)
	want := fmt.Sprintf("the %d days before %s, %s to %s, each once", days, date(now), date(first), date(now.AddDate(0, 0, -1)))
	var slots [days + 1][]Air // the last is today's
	older := -1
	for i, a := range air {
		e := &measure.Error{Field: fmt.Sprintf("air, day %d of %d, date", i+1, len(air)), Text: date(a.Date), Class: measure.ErrRange, Want: want}
		k := dayNumber(a.Date) - dayNumber(first)
		switch {
		case a.Date.IsZero():
			e.Class, e.Text = measure.ErrUnknown, ""
			bar(e)
		case k > days:
			e.Why = "that day is still to come"
			bar(e)
		case k < 0:
			if older < 0 {
				older = i
			}
		default:
			if slots[k] = append(slots[k], a); len(slots[k]) == 2 {
				e.Why = "it is given twice"
				bar(e)
			}
		}
	}
	var missing []string
	for k, of := range slots {
		if len(of) == 0 && k < days {
			missing = append(missing, date(first.AddDate(0, 0, k)))
		}
		if out = append(out, of...); k == days-1 {
			whole = len(out)
		}
	}
	if len(missing) > 0 {
		if older >= 0 {
			bar(&measure.Error{Field: fmt.Sprintf("air, day %d of %d, date", older+1, len(air)), Text: date(air[older].Date), Class: measure.ErrRange, Want: want})
		}
		bar(&measure.Error{Field: "air", Class: measure.ErrUnknown, Why: "high and low of " + strings.Join(missing, ", ") + " are missing", Want: want})
	}
	return out, whole
}

// date prints a day.
func date(t time.Time) string { return t.Format(time.DateOnly) }

// dayNumber counts the days of the calendar, whatever the clock.
func dayNumber(t time.Time) int64 {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (24 * 3600)
}

// thaw applies the rules for warm days; the last of those that are over, and
// what is known of today, are the newest.
func (w *weather) thaw(air []Air, whole int) {
	warm, mild, missing := false, false, false
	for i, a := range air {
		newest := i >= whole-1
		switch {
		case math.IsNaN(a.High) || math.IsNaN(a.Low):
			missing = true
			// What is known of the day may still be a thaw.
			mild = mild || a.High >= 0 || a.Low >= 0
		case a.mean() >= 0 || newest && a.High >= 0:
			warm = true
		case a.High >= 0:
			mild = true
		}
	}
	if missing {
		w.known = false
		w.reasons = append(w.reasons, unknown("air", "a high or low of the last days is missing"))
	}
	if warm {
		w.reasons = append(w.reasons, unfit("air", "thawing ice", warmAir+": stay off ("+minnesotaThaw.String()+"; "+manualThaw.String()+")"))
	}
	if warm || mild {
		w.factor, w.by = thawFactor, champlain
		w.why = mildAir + ": " + thawWhy
		if warm {
			w.why = warmAir + ": " + thawWhy
		}
	}
}

// drop applies the rule for a sudden cold snap in the last two days: cold is
// no improvement.
func (w *weather) drop(air []Air, whole int) {
	for i := max(1, whole-2); i < len(air); i++ {
		a, b := air[i-1], air[i]
		if a.High-b.High >= snap || a.Low-b.Low >= snap {
			w.reasons = append(w.reasons, unfit("air", "ice after a sudden drop of temperature", "it is brittle for 24 hours ("+ccohs.String()+"); "+snapAir+" is taken as sudden, our choice"))
			return
		}
	}
}
