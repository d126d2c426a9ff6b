package dock

import (
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

type (
	seasonJSON struct {
		Year     int          `json:"year"`
		Winters  int          `json:"winters"`
		IceOn    *spanJSON    `json:"ice_on"`
		IceOut   *spanJSON    `json:"ice_out"`
		Came     *string      `json:"came"`
		Table    datesJSON    `json:"table"`
		Memory   datesJSON    `json:"memory"`
		Loads    []loadJSON   `json:"loads"`
		Calendar []windowJSON `json:"calendar"`
		Caution  string       `json:"caution"`
		Error    *errorJSON   `json:"error"`
	}
	// A date is null where it never comes.
	spanJSON struct {
		P10    *string        `json:"p10"`
		P50    *string        `json:"p50"`
		P90    *string        `json:"p90"`
		Chance measure.Number `json:"chance"`
	}
	datesJSON struct {
		IceOn  *spanJSON `json:"ice_on"`
		IceOut *spanJSON `json:"ice_out"`
	}
	loadJSON struct {
		Load  string         `json:"load"`
		Need  measure.Number `json:"need"`
		First spanJSON       `json:"first"`
		Last  spanJSON       `json:"last"`
	}
	windowJSON struct {
		Task     string         `json:"task"`
		Earliest *string        `json:"earliest"`
		Usual    *string        `json:"usual"`
		Sure     *string        `json:"sure"`
		Latest   *string        `json:"latest"`
		Chance   measure.Number `json:"chance"`
		Against  string         `json:"against"`
		Early    string         `json:"early"`
		Notes    []string       `json:"notes"`
	}
)

func seasonOf(s *Season) *seasonJSON {
	out := &seasonJSON{Year: s.Year, Winters: s.Winters, Loads: []loadJSON{}, Calendar: []windowJSON{}, Caution: season.Caution, Error: errorOf(s.NoOdds)}
	out.Came, out.Table, out.Memory = dateOf(s.Came), datesOf(s.Table), datesOf(s.Memory)
	if s.NoOn == nil {
		on := spanOf(s.On)
		out.IceOn = &on
	}
	if s.NoOut == nil {
		gone := spanOf(s.Out)
		out.IceOut = &gone
	}
	for _, c := range s.Loads {
		out.Loads = append(out.Loads, loadJSON{c.Load, measure.Number(c.Need), spanOf(c.First), spanOf(c.Last)})
	}
	for _, w := range s.Calendar.Slots {
		out.Calendar = append(out.Calendar, windowJSON{
			w.Task.Name, dateOf(w.Earliest), dateOf(w.Usual), dateOf(w.Sure), dateOf(w.Latest), measure.Number(w.Chance), w.Against, w.Task.Early, texts(w.Notes),
		})
	}
	return out
}

func datesOf(d Dates) datesJSON {
	var out datesJSON
	for _, e := range []struct {
		span season.Span
		into **spanJSON
	}{{d.On, &out.IceOn}, {d.Out, &out.IceOut}} {
		if e.span != (season.Span{}) {
			s := spanOf(e.span)
			*e.into = &s
		}
	}
	return out
}

func spanOf(s season.Span) spanJSON {
	return spanJSON{dateOf(s.P10), dateOf(s.P50), dateOf(s.P90), measure.Number(s.Chance)}
}

// dateOf returns a day as text, null for the zero time.
func dateOf(t time.Time) *string {
	if t.IsZero() {
		return nil
	}
	s := t.Format(time.DateOnly)
	return &s
}
