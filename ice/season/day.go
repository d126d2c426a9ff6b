package season

import (
	"fmt"
	"math"
	"time"

	"example.org/floewright/lumber/measure"
)

// A Field is one optional entry of a Day.
type Field uint8

// The optional entries. A day that gives none has a daily mean alone, and snow
// is then assumed to fall.
const (
	HasDepth    Field = 1 << iota // snow depth on the ice was measured
	HasSnowfall                   // snowfall is known
	HasRain                       // rain, or all precipitation where snowfall is not known
	HasWind
	HasRange // high and low are known
)

// A Day is the weather of one day at the lake.
type Day struct {
	Date     time.Time // the calendar day; the hour is not looked at
	Mean     float64   // °C, mean of the air
	High     float64   // °C
	Low      float64   // °C
	Depth    float64   // m of snow on the ice
	Snowfall float64   // kg/m², mm of water
	Rain     float64   // kg/m², mm of water; all precipitation where Snowfall is not given
	Wind     float64   // m/s
	Has      Field     // which of the optional entries count

	Forecast bool // not measured yet
	Filled   bool // interpolated across a gap
}

// HighLow returns a day whose mean is the middle of its high and low, both °C (common
// practice).
func HighLow(date time.Time, high, low float64) Day {
	return Day{Date: date, Mean: (high + low) / 2, High: high, Low: low, Has: HasRange}
}

var (
	airRange   = measure.Range{Kind: measure.Temperature, Lo: -75, Hi: 55, Source: own("beyond any air on record over a lake: taken for a slip or another unit")}
	depthRange = measure.Range{Kind: measure.Length, Lo: 0, Hi: 5, Source: own("a depth beyond this is taken for a slip or another unit")}
	waterRange = measure.Range{Lo: 0, Hi: 500, Source: own("kg/m² in a day; more is taken for a slip")}
	windRange  = measure.Range{Kind: measure.Speed, Lo: 0, Hi: 75, Source: own("a wind beyond this is taken for a slip or another unit")}
)

// check refuses what no day has.
func (d *Day) check() error {
	if !(d.Mean >= airRange.Lo && d.Mean <= airRange.Hi) {
		return d.name(airRange.Check("mean temperature", d.Mean))
	}
	if d.Has == 0 {
		return nil
	}
	for _, f := range []struct {
		has   Field
		name  string
		x     float64
		r     measure.Range
		never bool
	}{
		{HasDepth, "snow depth", d.Depth, depthRange, false},
		{HasSnowfall, "snowfall", d.Snowfall, waterRange, false},
		{HasRain, "rain", d.Rain, waterRange, false},
		{HasWind, "wind", d.Wind, windRange, false},
		{HasRange, "high", d.High, airRange, false},
		{HasRange, "low", d.Low, airRange, d.Low > d.High},
	} {
		if d.Has&f.has == 0 {
			continue
		}
		if err := f.r.Check(f.name, f.x); err != nil {
			return d.name(err)
		}
		if f.never {
			return d.name(&measure.Error{Field: f.name, Kind: measure.Temperature, Value: f.x, Class: measure.ErrRange, Why: "is above the high"})
		}
	}
	return nil
}

// name puts the date before an error.
func (d *Day) name(err error) error {
	return fmt.Errorf("%s: %w", d.Date.Format(time.DateOnly), err)
}

// snow returns the snow and the rain of a day in kg/m².
func (d *Day) water(p *Params) (snow, rain float64) {
	switch {
	case d.Has&HasSnowfall != 0:
		snow = d.Snowfall
		if d.Has&HasRain != 0 {
			rain = d.Rain
		}
	case d.Has&HasRain != 0:
		// Precipitation alone: snow below 0 °C, rain above 2 °C, a mix between.
		share := max(0, min(1, 1-d.Mean/2))
		snow, rain = share*d.Rain, (1-share)*d.Rain
	case d.Mean < 1:
		snow = p.Snowfall * math.Exp(p.SnowTrend*d.Mean)
	}
	return snow, rain
}

// number returns the days of a date since 1970, by its calendar day.
func number(t time.Time) int {
	y, m, d := t.Date()
	return int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// dateOf is the inverse of number.
func dateOf(n int) time.Time { return time.Unix(int64(n)*86400, 0).UTC() }
