package season

import (
	"context"
	"math"
	"time"

	"example.org/floewright/lumber/measure"
)

// A Hole is one drilled hole, or the mean of several on one day. Lengths in m.
type Hole struct {
	Date  time.Time
	Clear float64
	White float64

	// Whole says that Clear holds the whole thickness, white ice not told apart.
	Whole bool

	// SD is how well it was measured and how well it stands for the lake; 0
	// counts as 4 cm, our choice.
	SD float64
}

func (h Hole) total() float64 { return h.Clear + h.White }

func (h Hole) check() error {
	r := measure.Range{Kind: measure.Length, Lo: 0, Hi: 3, Source: own("a thickness beyond this is taken for a slip of the pen")}
	if err := r.Check("clear ice of "+h.Date.Format(time.DateOnly), h.Clear); err != nil {
		return err
	}
	if err := r.Check("white ice of "+h.Date.Format(time.DateOnly), h.White); err != nil {
		return err
	}
	if h.Whole && h.White != 0 {
		return &measure.Error{Field: "hole of " + h.Date.Format(time.DateOnly), Class: measure.ErrSyntax, Why: "white ice is given although the thickness is the whole"}
	}
	return r.Check("scatter of "+h.Date.Format(time.DateOnly), h.SD)
}

// Seen is what past winters showed. Either part may be empty.
type Seen struct {
	Winters []Winter // Year, On and Out; a zero time is not known
	Holes   []Hole

	// HalfLife is a number of winters, after which an observation counts half
	// as much; 0 counts all alike.
	HalfLife float64
}

// A Misfit is how far the model was from what was seen: model minus seen, days
// or metres.
type Misfit struct {
	N    int
	Bias float64 // mean
	MAE  float64 // mean of the absolute values
	SD   float64 // root mean square
}

func (m *Misfit) add(e float64) {
	m.N++
	m.Bias += e
	m.MAE += math.Abs(e)
	m.SD += e * e
}

func (m *Misfit) mean() {
	if n := float64(m.N); n > 0 {
		m.Bias, m.MAE, m.SD = m.Bias/n, m.MAE/n, math.Sqrt(m.SD/n)
	}
}

// Fitted is a lake's own set.
type Fitted struct {
	Params    Params
	On, Out   Misfit // days, on the winters it was fitted to
	Thickness Misfit // m
	Usual     Usual  // the thickness that the lake usually has by date
}

// bends are the params that a fit changes, with the spread between lakes that
// it starts from: a factor's natural logarithm, or what add says. Our choice.
var bends = [][]bend{
	{ // ice-on
		{"Exchange", 0.3, func(p *Params, x float64) { p.Exchange *= math.Exp(x) }},
		{"Mixing", 0.5, func(p *Params, x float64) { p.Mixing *= math.Exp(x) }},
		{"SkinPoint", 1.5, func(p *Params, x float64) { p.SkinPoint += x }},
		{"WaterLoss", 15, func(p *Params, x float64) { p.WaterLoss = math.Max(0, p.WaterLoss+x) }},
		{"Frost", 0.5, func(p *Params, x float64) { p.Frost *= math.Exp(x) }},
	},
	{ // thickness
		{"Catch and Snowfall", 0.3, func(p *Params, x float64) { p.Catch *= math.Exp(x) }},
		{"OldConductivity", 0.3, func(p *Params, x float64) {
			p.OldConductivity *= math.Exp(x)
			p.NewConductivity *= math.Exp(x)
		}},
		{"IceExchange", 0.3, func(p *Params, x float64) { p.IceExchange *= math.Exp(x) }},
		{"WaterHeat", 0.5, func(p *Params, x float64) { p.WaterHeat *= math.Exp(x) }},
		{"Bridge", 0.7, func(p *Params, x float64) { p.Bridge *= math.Exp(x) }},
	},
	{ // ice-out
		{"MeltExchange", 0.4, func(p *Params, x float64) { p.MeltExchange *= math.Exp(x) }},
		{"MeltLoss", 0.4, func(p *Params, x float64) { p.MeltLoss *= math.Exp(x) }},
		{"SnowSun", 0.4, func(p *Params, x float64) { p.SnowSun *= math.Exp(x) }},
		{"IceSun", 0.4, func(p *Params, x float64) { p.IceSun *= math.Exp(x) }},
		{"Cover", 0.5, func(p *Params, x float64) { p.Cover *= math.Exp(x) }},
	},
}

type bend struct {
	name string
	sd   float64
	do   func(p *Params, x float64)
}

// ours is the weight of the misfit beside the departure from the start. Below 1:
// winters that follow each other, and misfits of one model, are not
// independent. Our choice.
const ours = 0.7

// fewestWinters that a fit is made from.
const fewestWinters = 3

// Fit bends the params of start to a lake. It minimises, over all winters, the
// squared misfit (Gauss) of ice-on and ice-out (5 days) and of each winter's holes
// (8 cm, ice modelled too thick counting double), linear beyond 2.5 of these so
// that one odd winter does not rule, plus the squared departure from start.
// With few winters it stays near start. With nine or more, each group of params
// (ice-on, thickness, ice-out) is first fitted to the earlier two thirds and
// keeps its start if that does no better on the later third: climates drift,
// and a bend that does not carry forward is none. The days may hold gaps; winters
// beside a gap are left out. It takes a context, being long work: seconds for
// a century.
func Fit(ctx context.Context, l Lake, start Params, days []Day, seen Seen) (Fitted, error) {
	m, err := New(l, start)
	if err != nil {
		return Fitted{}, err
	}
	f, err := newFitting(m, days, seen)
	if err != nil {
		return Fitted{}, err
	}
	p, err := f.bendAll(ctx, start)
	if err != nil {
		return Fitted{}, err
	}
	out := Fitted{Params: p}
	f.compare(p, func(kind int, _ float64, e float64) {
		switch kind {
		case isOn:
			out.On.add(e)
		case isOut:
			out.Out.add(e)
		default:
			out.Thickness.add(e)
		}
	})
	out.On.mean()
	out.Out.mean()
	out.Thickness.mean()
	out.Usual = f.usual(p)
	return out, nil
}
