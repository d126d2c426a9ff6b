package season

import (
	"math"
	"time"

	"example.org/floewright/lumber/measure"
)

// Params are the numbers of the daily model. Default serves any lake; Fit bends
// a few of them to one lake.
type Params struct {
	// Open water.
	Exchange  float64 // W/(m² K), heat that open water gives the air per degree
	WaterSun  float64 // share of the sun above the air that open water takes in
	WaterLoss float64 // W/m², loss of open water besides: evaporation, the cold sky
	AirDays   float64 // days that the skin of the water remembers the air
	Mixing    float64 // degrees of frost that one degree of water below holds off
	SkinPoint float64 // °C that the sum of both must fall below before frost counts
	Frost     float64 // °C·day of such frost that close the lake
	FrostDays float64 // days over which the sum of frost is forgotten

	// Growth.
	IceExchange float64 // W/(m² K), from the top of ice or snow to the air
	WaterHeat   float64 // W/m² that the water gives the ice from below

	// Snow.
	Catch           float64 // share of the snowfall that stays on the ice
	Snowfall        float64 // kg/(m² day) on a day at 0 °C or below, where no record says
	SnowTrend       float64 // 1/°C, how fast that falls off in the cold
	NewDensity      float64 // kg/m³ of snow that falls at -8 °C
	OldDensity      float64 // kg/m³ of settled snow
	NewConductivity float64 // W/(m K) of new snow
	OldConductivity float64 // W/(m K) of settled snow
	Settle          float64 // days in which snow settles at 0 °C
	SettleTrend     float64 // 1/°C, how much slower in the cold
	FreshTrend      float64 // 1/°C, how much looser snow falls in the cold
	SlushSnow       float64 // kg of snow in 1 m³ of slush
	Bridge          float64 // kg/m² of snow beyond the ice's lift that does not flood it yet

	// Melt.
	MeltExchange float64 // W/(m² K), from air above 0 °C to melting snow or ice
	MeltLoss     float64 // W/m², loss of a melting surface to the sky
	SnowSun      float64 // share of the sun above the air that melts snow
	IceSun       float64 // share of the same sun that melts bare ice
	Cover        float64 // m of snow that hide the ice from the sun
	SunPower     float64 // a number: extra power of the sine of the sun's height: a low sun counts less
	Rot          float64 // share of the melting sun that works between the grains of bare ice
	Thinnest     float64 // m; thinner ice does not outlast a day of thaw

	// Cleared shovels every snowfall off: a pad kept bare.
	Cleared bool
}

// Pad returns the params of a pad that is kept free of snow. It stands
// beside natural ice; banks of shovelled snow press the ice round it down.
func (p Params) Pad() Params {
	p.Cleared = true
	return p
}

// Default is the one set for any lake. It was fitted, within ranges taken from
// the literature, to the first years of two lakes alone; see the package's page.
func Default() Params {
	return defaults
}

// fields lists every number with its accepted range: wide enough for any lake,
// narrow enough that the physics keep their sign.
var fields = []struct {
	name   string
	lo, hi float64
	at     func(p *Params) *float64
}{
	{"heat exchange of open water", 2, 200, func(p *Params) *float64 { return &p.Exchange }},
	{"sun on open water", 0, 2, func(p *Params) *float64 { return &p.WaterSun }},
	{"loss of open water", 0, 400, func(p *Params) *float64 { return &p.WaterLoss }},
	{"memory of the skin", 0.1, 60, func(p *Params) *float64 { return &p.AirDays }},
	{"mixing", 0, 200, func(p *Params) *float64 { return &p.Mixing }},
	{"skin point", -30, 10, func(p *Params) *float64 { return &p.SkinPoint }},
	{"frost", 0, 100, func(p *Params) *float64 { return &p.Frost }},
	{"memory of frost", 0.1, 1000, func(p *Params) *float64 { return &p.FrostDays }},
	{"heat exchange of ice", 1, 500, func(p *Params) *float64 { return &p.IceExchange }},
	{"heat from the water", 0, 50, func(p *Params) *float64 { return &p.WaterHeat }},
	{"catch of snow", 0, 3, func(p *Params) *float64 { return &p.Catch }},
	{"snowfall", 0, 30, func(p *Params) *float64 { return &p.Snowfall }},
	{"trend of snowfall", 0, 1, func(p *Params) *float64 { return &p.SnowTrend }},
	{"density of new snow", 30, 400, func(p *Params) *float64 { return &p.NewDensity }},
	{"density of settled snow", 100, 600, func(p *Params) *float64 { return &p.OldDensity }},
	{"conductivity of new snow", 0.02, 1, func(p *Params) *float64 { return &p.NewConductivity }},
	{"conductivity of settled snow", 0.05, 2, func(p *Params) *float64 { return &p.OldConductivity }},
	{"settling of snow", 0.2, 200, func(p *Params) *float64 { return &p.Settle }},
	{"trend of settling", 0, 0.5, func(p *Params) *float64 { return &p.SettleTrend }},
	{"trend of fresh snow", 0, 0.5, func(p *Params) *float64 { return &p.FreshTrend }},
	{"snow in slush", 100, 800, func(p *Params) *float64 { return &p.SlushSnow }},
	{"bridging", 0, 500, func(p *Params) *float64 { return &p.Bridge }},
	{"heat exchange of melt", 1, 200, func(p *Params) *float64 { return &p.MeltExchange }},
	{"loss of a melting surface", 0, 300, func(p *Params) *float64 { return &p.MeltLoss }},
	{"sun on snow", 0, 1, func(p *Params) *float64 { return &p.SnowSun }},
	{"sun on ice", 0, 1, func(p *Params) *float64 { return &p.IceSun }},
	{"covering snow", 0.001, 1, func(p *Params) *float64 { return &p.Cover }},
	{"power of the sun's height", 0, 3, func(p *Params) *float64 { return &p.SunPower }},
	{"rot", 0, 1, func(p *Params) *float64 { return &p.Rot }},
	{"thinnest ice", 0.001, 0.5, func(p *Params) *float64 { return &p.Thinnest }},
}

var paramRange = own("wider than any value that was read or fitted")

// check refuses a number outside its range, and snow that settles to less than
// it fell with.
func (p Params) check() error {
	for _, f := range fields {
		if err := (measure.Range{Lo: f.lo, Hi: f.hi, Source: paramRange}).Check(f.name, *f.at(&p)); err != nil {
			return err
		}
	}
	if p.NewDensity > p.OldDensity || p.NewConductivity > p.OldConductivity {
		return &measure.Error{Field: "snow", Class: measure.ErrRange, Why: "settled snow is denser and conducts better than new snow"}
	}
	return nil
}

// A Lake is where and how deep.
type Lake struct {
	Latitude  float64 // degrees, south negative
	MeanDepth float64 // m, volume over area; it sets how long the lake stays warm in autumn
}

var lakeDepth = measure.Range{Kind: measure.Length, Lo: 0.3, Hi: 400, Source: own("a mean depth beyond this is taken for a slip")}

func (l Lake) check() error {
	if err := latitudes.Check("latitude", l.Latitude); err != nil {
		return err
	}
	return lakeDepth.Check("mean depth", l.MeanDepth)
}

// year returns the winter a date belongs to: the year in which it began, from
// September on in the north, from March on in the south.
func (l Lake) year(n int) int {
	first := time.September
	if l.Latitude < 0 {
		first = time.March
	}
	year, month, _ := dateOf(n).Date()
	if month < first {
		year--
	}
	return year
}

// own returns a source for a choice of this library; why says what it rests on.
func own(why string) *measure.Source {
	return &measure.Source{Title: why, Status: measure.OwnChoice}
}

// windFactor scales heat exchange with the wind: 1 at the 4 m/s that the sets
// were fitted at, linear in the wind, as the bulk formulas of heat exchange are.
func windFactor(wind float64) float64 {
	return math.Max(0.6, math.Min(1.8, 0.6+0.1*wind))
}
