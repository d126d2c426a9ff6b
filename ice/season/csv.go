package season

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"example.org/floewright/lumber/measure"
)

// Options say how a table of weather is to be read.
type Options struct {
	Fahrenheit bool // temperatures are °F; nothing in the table is taken as a hint of that
	MaxGap     int  // days that may be interpolated; 0 counts as 3, below 0 as none
}

// A Gap is a run of days that a table does not hold.
type Gap struct {
	From, To time.Time // first and last missing day
	Filled   bool      // interpolated
}

// String names the gap.
func (g Gap) String() string {
	n := number(g.To) - number(g.From) + 1
	what := "left open"
	if g.Filled {
		what = "interpolated"
	}
	days := "1 day"
	if n != 1 {
		days = fmt.Sprintf("%d days", n)
	}
	return fmt.Sprintf("%s to %s: %s missing, %s", g.From.Format(time.DateOnly), g.To.Format(time.DateOnly), days, what)
}

// A Record is a table of weather that was read.
type Record struct {
	Days []Day // in order; a gap that is left open is a jump of the date
	Gaps []Gap
}

// A column is what one heading means: its unit in SI, and how a day takes it.
type column struct {
	unit float64 // 0: a temperature
	has  Field
	put  func(d *Day, x float64)
}

var columns = map[string]column{
	"temp":             {0, 0, func(d *Day, x float64) { d.Mean = x }},
	"mean":             {0, 0, func(d *Day, x float64) { d.Mean = x }},
	"high":             {0, 0, func(d *Day, x float64) { d.High = x }},
	"low":              {0, 0, func(d *Day, x float64) { d.Low = x }},
	"snow_depth_cm":    {0.01, HasDepth, func(d *Day, x float64) { d.Depth = x }},
	"snow_depth_in":    {measure.Inch, HasDepth, func(d *Day, x float64) { d.Depth = x }},
	"snowfall_mm":      {1, HasSnowfall, func(d *Day, x float64) { d.Snowfall = x }},
	"snowfall_in":      {25.4, HasSnowfall, func(d *Day, x float64) { d.Snowfall = x }},
	"rain_mm":          {1, HasRain, func(d *Day, x float64) { d.Rain = x }},
	"rain_in":          {25.4, HasRain, func(d *Day, x float64) { d.Rain = x }},
	"precipitation_mm": {1, HasRain, func(d *Day, x float64) { d.Rain = x }},
	"precipitation_in": {25.4, HasRain, func(d *Day, x float64) { d.Rain = x }},
	"wind_ms":          {1, HasWind, func(d *Day, x float64) { d.Wind = x }},
	"wind_kmh":         {measure.KPH, HasWind, func(d *Day, x float64) { d.Wind = x }},
	"wind_mph":         {measure.MPH, HasWind, func(d *Day, x float64) { d.Wind = x }},
}

const wantColumns = "date; temp (or mean), or high and low; beside them snow_depth_cm, snowfall_mm, rain_mm or precipitation_mm (water, not snow), wind_ms (or _in, _kmh, _mph); forecast"

// dateForms are the accepted ISO forms.
var dateForms = []string{time.DateOnly, "20060102", "2006-01-02T15:04:05", "2006-01-02 15:04:05", "2006-01-02T15:04", "2006-01-02 15:04"}

// ReadCSV reads a table of daily weather whose first line names its columns:
// date,temp or date,high,low, in any order and case, with commas, semicolons or
// tabs. Dates are ISO (2026-01-31). A line that begins with # is a remark.
// Water is water: snowfall is what the snow melts down to. A column forecast
// marks days not measured yet with x, yes, true, 1 or forecast. An empty cell
// of temperature is a missing day; other empty cells are not known.
//
// Gaps of a few days are interpolated and reported, longer ones reported and
// left open. A date that repeats, goes back or cannot be read, a value that no
// day has, and a heading that is not known are errors with name and line.
func ReadCSV(name string, r io.Reader, o Options) (Record, error) {
	data, err := io.ReadAll(io.LimitReader(r, 64<<20))
	if err != nil {
		return Record{}, fmt.Errorf("%s: %w", name, err)
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	c := csv.NewReader(bytes.NewReader(data))
	c.Comment, c.TrimLeadingSpace, c.FieldsPerRecord = '#', true, 0
	c.Comma = separator(data)
	at := func(line int, err error) error { return fmt.Errorf("%s:%d: %w", name, line, err) }
	head, err := c.Read()
	if errors.Is(err, io.EOF) {
		return Record{}, at(1, syntax("table", "", "is empty", wantColumns))
	}
	if err != nil {
		return Record{}, fmt.Errorf("%s: %w", name, err)
	}
	line, _ := c.FieldPos(0)
	t := tabular{o: o}
	if err := t.heading(head); err != nil {
		return Record{}, at(line, err)
	}
	var out Record
	for {
		row, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return Record{}, fmt.Errorf("%s: %w", name, err)
		}
		line, _ := c.FieldPos(0)
		d, known, err := t.row(row)
		if err != nil {
			return Record{}, at(line, err)
		}
		if t.last != nil {
			switch step := number(d.Date) - number(*t.last); {
			case step == 0:
				return Record{}, at(line, syntax("date", d.Date.Format(time.DateOnly), "is given twice", ""))
			case step < 0:
				return Record{}, at(line, syntax("date", d.Date.Format(time.DateOnly), "comes after "+t.last.Format(time.DateOnly), "dates in order"))
			}
		}
		t.last = &d.Date
		if known {
			out.Days = append(out.Days, d)
		}
	}
	if len(out.Days) == 0 {
		return Record{}, at(line, syntax("table", "", "has no day", wantColumns))
	}
	out.fill(o)
	return out, nil
}

func syntax(field, text, why, want string) error {
	return &measure.Error{Field: field, Text: text, Class: measure.ErrSyntax, Why: why, Want: want}
}

// separator finds what parts the cells of the heading.
func separator(data []byte) rune {
	for line := range bytes.Lines(data) {
		if len(bytes.TrimSpace(line)) == 0 || line[0] == '#' {
			continue
		}
		for _, s := range ";\t" {
			if bytes.ContainsRune(line, s) {
				return s
			}
		}
		break
	}
	return ','
}

// tabular reads the rows of one table.
type tabular struct {
	o        Options
	date     int
	forecast int
	cols     []*column
	names    []string
	mean     bool
	last     *time.Time
}

func (t *tabular) heading(head []string) error {
	t.date, t.forecast = -1, -1
	seen := map[string]bool{}
	for i, h := range head {
		h = strings.ToLower(strings.TrimSpace(h))
		t.names = append(t.names, h)
		t.cols = append(t.cols, nil)
		if seen[h] {
			return syntax("column", h, "is given twice", wantColumns)
		}
		seen[h] = true
		switch h {
		case "date":
			t.date = i
		case "forecast":
			t.forecast = i
		default:
			c, ok := columns[h]
			if !ok {
				return &measure.Error{Field: "column", Text: h, Class: measure.ErrName, Want: wantColumns}
			}
			t.cols[i] = &c
		}
	}
	for _, pair := range [][]string{{"temp", "mean"}, {"rain_mm", "rain_in", "precipitation_mm", "precipitation_in"}, {"snow_depth_cm", "snow_depth_in"}, {"snowfall_mm", "snowfall_in"}, {"wind_ms", "wind_kmh", "wind_mph"}} {
		n := 0
		for _, p := range pair {
			if seen[p] {
				n++
			}
		}
		if n > 1 {
			return syntax("columns", strings.Join(pair, ", "), "say the same thing twice", "one of them")
		}
	}
	t.mean = seen["temp"] || seen["mean"]
	if t.date < 0 || !t.mean && !(seen["high"] && seen["low"]) {
		return syntax("columns", strings.Join(head, ","), "lack the date or the temperature", wantColumns)
	}
	if seen["high"] != seen["low"] {
		return syntax("columns", strings.Join(head, ","), "give one of high and low without the other", wantColumns)
	}
	return nil
}

// row reads one line; a day without temperature is not known.
func (t *tabular) row(row []string) (d Day, known bool, err error) {
	text := strings.TrimSpace(row[t.date])
	for _, form := range dateForms {
		if d.Date, err = time.Parse(form, text); err == nil {
			break
		}
	}
	if err != nil {
		return d, false, syntax("date", text, "", "an ISO date such as 2026-01-31")
	}
	d.Date = dateOf(number(d.Date))
	if y := d.Date.Year(); y < 1600 || y > 2400 {
		return d, false, syntax("date", text, "is of no year with a record", "")
	}
	if t.forecast >= 0 {
		switch f := strings.ToLower(strings.TrimSpace(row[t.forecast])); f {
		case "", "0", "no", "false":
		case "x", "1", "yes", "true", "forecast":
			d.Forecast = true
		default:
			return d, false, syntax("forecast", f, "", "x or nothing")
		}
	}
	var mean, high, low bool
	for i, c := range t.cols {
		cell := strings.TrimSpace(row[i])
		if c == nil || cell == "" {
			continue
		}
		x, err := strconv.ParseFloat(cell, 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			return d, false, syntax(t.names[i], cell, "", "a number with a decimal point")
		}
		switch {
		case c.unit != 0:
			x *= c.unit
		case t.o.Fahrenheit:
			x = measure.Fahrenheit(x)
		}
		c.put(&d, x)
		d.Has |= c.has
		switch t.names[i] {
		case "temp", "mean":
			mean = true
		case "high":
			high = true
		case "low":
			low = true
		}
	}
	if high && low {
		d.Has |= HasRange
		if !mean {
			d.Mean, mean = (d.High+d.Low)/2, true
		}
	}
	if !mean {
		return d, false, nil
	}
	if err := d.check(); err != nil {
		if errors.Is(err, measure.ErrRange) && !t.o.Fahrenheit && math.Max(math.Abs(d.Mean), math.Abs(d.High)) > airRange.Hi {
			return d, false, fmt.Errorf("%w; °F must be declared", err)
		}
		return d, false, err
	}
	return d, true, nil
}

// fill interpolates short gaps and reports all.
func (r *Record) fill(o Options) {
	most := o.MaxGap
	if most == 0 {
		most = 3
	}
	days := make([]Day, 0, len(r.Days))
	for i, d := range r.Days {
		if i > 0 {
			before := r.Days[i-1]
			n := number(d.Date) - number(before.Date) - 1
			if n > 0 {
				g := Gap{From: dateOf(number(before.Date) + 1), To: dateOf(number(d.Date) - 1), Filled: n <= most}
				r.Gaps = append(r.Gaps, g)
				for k := 1; g.Filled && k <= n; k++ {
					x := float64(k) / float64(n+1)
					days = append(days, Day{
						Date: dateOf(number(before.Date) + k), Mean: before.Mean + x*(d.Mean-before.Mean),
						Forecast: before.Forecast || d.Forecast, Filled: true,
					})
				}
			}
		}
		days = append(days, d)
	}
	r.Days = days
}
