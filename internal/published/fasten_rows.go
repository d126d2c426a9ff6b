package published

import (
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// workedJoints computes the rows of data/conn_worked.csv by their names.
var workedJoints = map[string]func() (float64, error){
	"W02": func() (float64, error) {
		j := bolted(0.75, 3.5, 1.5)
		j.Side.Angle = math.Pi / 2
		return yieldOf(j)()
	},
	"W03-30": bearingAt(0.75, 30),
	"W03-45": bearingAt(0.75, 45),
	"W03-60": bearingAt(0.75, 60),
	"W04":    bearingAt(0.5, 45),
	"W05": func() (float64, error) {
		j := bolted(0.5, 1.5, 1.5)
		j.Side.Angle = math.Pi / 4
		return yieldOf(j)()
	},
	"W06": groupOf(4, 0.625, 2.5, 1.4e6, 10.875, 10.875),
	"W07": func() (float64, error) {
		j := bolted(0.625, 1.5, 1.5)
		j.PerRow, j.Spacing = 4, 2.5*measure.Inch
		for _, p := range []*fasten.Piece{&j.Main, &j.Side} {
			p.Grade = wood(0.55)
			p.Grade.E = psiOf(1.4e6)
			p.Width, p.End, p.Edge = 7.25*measure.Inch, 4.375*measure.Inch, 3.625*measure.Inch
		}
		return lateralOf(j, lbf)()
	},
	"W08": func() (float64, error) {
		y, err := driven(listed("1/2 x 4 lag screw", 0), 1.5, 0.5).Yield()
		return y.Equations / lbf, err
	},
	"W08b": func() (float64, error) {
		y, err := driven(listed("1/2 x 4 lag screw", 0), 1.5, 0.5).Yield()
		return y.Table / lbf, err
	},
	"W09": pullOf(driven(listed("1/2 x 4 lag screw", 0), 1.5, 0.55), "withdrawal"),
	"W13": func() (float64, error) {
		j := across(driven(listed("1/2 lag screw", 1.5+4+0.3125), 1.5, 0.5))
		j.Main.Thickness = 5.5 * measure.Inch
		z, err := lateralOf(j, lbf)()
		return 12 * z / 300, err
	},
	"W14": func() (float64, error) {
		j := across(bolted(0.5, 1.5, 1.5))
		j.Main.Grade, j.Side.Grade = wood(0.42), wood(0.42)
		z, err := lateralOf(j, lbf)()
		return 12 * z / 300, err
	},
	"W15":  func() (float64, error) { return combined(fasten.LagScrew, 394.22, 827.76) },
	"W16b": func() (float64, error) { return combined(fasten.Nail, 100, 100) },
	"W17": func() (float64, error) {
		j := driven(listed("16d common nail", 0), 1.5, 0.5)
		j.Main.Thickness, j.Toe = 1.5*measure.Inch, true
		return lateralOf(j, lbf)()
	},
	"W18": pullOf(driven(listed("No.10 wood screw", 3), 1.5, 0.55), "withdrawal"),
	"W19": func() (float64, error) {
		j := driven(listed("16d common nail", 0), 1.5, 0.42)
		j.Service = fasten.Service{Seasoned: true}
		return pullOf(j, "withdrawal")()
	},
	"W20": func() (float64, error) {
		j := bolted(0.5, 1.5, 1.5)
		j.PerRow, j.Spacing = 2, 1.5*measure.Inch
		for _, p := range []*fasten.Piece{&j.Main, &j.Side} {
			p.Grade.E = psiOf(1.6e6)
			p.Width, p.End, p.Edge = 5.5*measure.Inch, 2.625*measure.Inch, 2.75*measure.Inch
		}
		c, err := j.Lateral(lumber.TenYears)
		for _, f := range c.Factors {
			if f.Symbol == "CΔ" {
				return f.Value, err
			}
		}
		return 0, err
	},
	"W21": gapped(0.5),
	"W23": func() (float64, error) {
		j := bolted(0.5, 1.5, 1.5)
		for _, p := range []*fasten.Piece{&j.Main, &j.Side} {
			p.Grade = wood(0.55)
			p.Grade.FcPerp = psiOf(565)
		}
		return pullOf(j, "washer on the side piece")()
	},
	"W26": func() (float64, error) {
		x, _, err := fasten.Tie{Strength: 5750 * lbf, Efficiency: 0.5, Rounded: true, DesignFactor: 12}.Allowable()
		return x / lbf, err
	},
	"W30": func() (float64, error) {
		j := bolted(0.5, 3, 0.25)
		j.Main.Grade, j.Side.Material, j.Double = wood(0.55), fasten.Plate, true
		return yieldOf(j)()
	},
	"W31": func() (float64, error) {
		j := driven(listed("1/4 lag screw", 4), 1.5, 0.5)
		j.Main.EndGrain = true
		// Of 4 in the thread takes 2.5 with the point of 5/32, all in the main piece.
		w, err := pullOf(j, "withdrawal")()
		return w / (2.5 - 5.0/32), err
	},
	"W32": func() (float64, error) {
		x, err := fasten.PullThrough(0.312*measure.Inch, 0.75*measure.Inch, 0.5)
		return x / lbf, err
	},
	"W33": func() (float64, error) { return modeOf(bolted(0.5, 1, 3.5), "IIIm") },
	"W34": yieldOf(bolted(0.5, 0.5, 1.5)),
	"W35": yieldOf(steelMain()),
	"W36": groupOf(4, 1, 4, 1.4e6, 12, 12),
	"W37": groupOf(3, 0.75, 3, 1.6e6, 10.5, 8.25),

	"E2.1a": perInch(listed("8d common nail", 0), 0.42, 1),
	"E2.1b": func() (float64, error) {
		j := driven(listed("8d common nail", 0), 0.105, 0.42)
		j.Side.Material = fasten.Sheet
		return pullOf(j, "withdrawal")()
	},
	"E2.3a":     perInch(listed("1/2 lag screw", 0), 0.55, 1),
	"E10d":      yieldOf(driven(listed("10d common nail", 0.75+1.48), 0.75, 0.5)),
	"gap 0":     gapped(0),
	"gap 0.125": gapped(0.125),
	"gap 0.25":  gapped(0.25),
	"nail step": func() (float64, error) {
		spf, err := yieldOf(driven(listed("16d common nail", 0), 1.5, 0.42))()
		if err != nil {
			return 0, err
		}
		fir, err := yieldOf(driven(listed("16d common nail", 0), 1.5, 0.5))()
		return spf / fir, err
	},
	"G07": func() (float64, error) {
		tau, _, _, err := fasten.Pin{Diameter: 0.016, Lug: 0.01, Leaf: 0.01}.Stresses(5000)
		return tau / measure.Megapascal, err
	},
	"PF ring": perInch(fasten.Fastener{Kind: fasten.RingNail, Diameter: 0.177 * measure.Inch}, 0.55, 1),
}

// combined returns a design value under a load at 45° to the wood's surface.
func combined(k fasten.Kind, lateral, withdrawal float64) (float64, error) {
	x, err := fasten.Fastener{Kind: k}.Combined(lateral*lbf, withdrawal*lbf, math.Pi/4)
	return x / lbf, err
}
