package float

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Sources of the presets. The makers' sheets are not named: the figures are those
// of the trade's classes.
var (
	tradeTable = &measure.Source{Title: "trade data table of steel drums", Locator: "inside 22.5 in by 33.5 in (tight head), 32.8 in (open head); tare", Status: measure.Read}
	steelSheet = &measure.Source{Title: "inside size from a trade data table, with the sheet added", Locator: "sheet 1.2/0.9/1.2 mm or 1.5 mm; height ±3 mm (EN 210), diameter ±2 mm (from memory)", Status: measure.Independent}
	steelHull  = &measure.Source{Title: "plain cylinder of the outside size", Locator: "±1.5 % for hoops, chimes and dents: our choice", Status: measure.Independent}
	sizeGuide  = &measure.Source{Title: "size guide of plastic drums", Locator: "220 L: 95 cm by 58 cm; 9.5 to 10.5 kg", Status: measure.Read}
	plasticUp  = &measure.Source{Title: "brimful capacity and the volume of the wall at 950 kg/m³", Status: measure.Memory}
	plasticMid = &measure.Source{Title: "figures of the trade for plastic drums, fairly sure", Status: measure.Memory}
	plasticLow = &measure.Source{Title: "figures of the trade for plastic drums, not sure", Status: measure.Memory}
	steelMid   = &measure.Source{Title: "figures of the trade for 30 gal steel drums, fairly sure", Status: measure.Memory}
)

// drums holds the presets, the surest first.
var drums = []Drum{
	steel("55 gal steel, tight head", 22.5*measure.Inch, 33.5*measure.Inch, 0.9e-3, 1.2e-3, 40),
	steel("55 gal steel, tight head, heavy", 22.5*measure.Inch, 33.5*measure.Inch, 1.5e-3, 1.5e-3, 60),
	steel("55 gal steel, open head", 22.5*measure.Inch, 32.8*measure.Inch, 0.9e-3, 1.2e-3, 38),
	{
		Name:         "220 L plastic",
		Diameter:     Figure{580e-3, 5e-3, sizeGuide},
		Length:       Figure{943e-3, 8e-3, sizeGuide},
		Displacement: plastic(227.5*measure.Litre, 4*measure.Litre, 10),
		Mass:         Figure{10, 0.5, sizeGuide},
	},
	{
		Name:         "55 gal plastic, tight head",
		Diameter:     Figure{589.5e-3, 5.5e-3, plasticMid},
		Length:       Figure{885.5e-3, 9.5e-3, plasticMid},
		Displacement: plastic(57.5*measure.USGallon, 4*measure.Litre, 22.5*measure.Pound),
		Mass:         Figure{22.5 * measure.Pound, 1.5 * measure.Pound, plasticMid},
	},
	{
		Name:         "30 gal steel",
		Diameter:     Figure{18.25*measure.Inch + 1.8e-3, 3e-3, steelMid},
		Length:       Figure{27.75 * measure.Inch, 0.75 * measure.Inch, steelMid},
		Displacement: Figure{118.5 * measure.Litre, 3 * measure.Litre, steelMid},
		Mass:         Figure{26 * measure.Pound, 2 * measure.Pound, steelMid},
	},
	{
		Name:         "30 gal plastic",
		Diameter:     Figure{19.5 * measure.Inch, 0.5 * measure.Inch, plasticLow},
		Length:       Figure{29.75 * measure.Inch, 1.25 * measure.Inch, plasticLow},
		Displacement: plastic(31.2*measure.USGallon, 6*measure.Litre, 13*measure.Pound),
		Mass:         Figure{13 * measure.Pound, 1 * measure.Pound, plasticLow},
	},
	{
		Name:         "15 gal plastic",
		Diameter:     Figure{14.75 * measure.Inch, 0.25 * measure.Inch, plasticLow},
		Length:       Figure{26.25 * measure.Inch, 0.25 * measure.Inch, plasticLow},
		Displacement: plastic(15.6*measure.USGallon, 3*measure.Litre, 6*measure.Pound),
		Mass:         Figure{6 * measure.Pound, 0.5 * measure.Pound, plasticLow},
	},
}

// steel makes a preset from the inside size and the sheet of body and heads (m)
// and the tare (lb).
func steel(name string, diameter, length, body, head, pounds float64) Drum {
	d, l := diameter+2*body, length+2*head
	v := math.Pi / 4 * d * d * l
	return Drum{
		Name:         name,
		Diameter:     Figure{d, 2e-3, steelSheet},
		Length:       Figure{l, 3e-3, steelSheet},
		Displacement: Figure{v, 0.015 * v, steelHull},
		Mass:         Figure{pounds * measure.Pound, 3 * measure.Pound, tradeTable},
	}
}

// plastic returns the displacement of a plastic drum from its brimful capacity
// (m³) and its mass (kg): the capacity and the wall, at the 950 kg/m³ of
// high-density polyethylene.
func plastic(brimful, within, mass float64) Figure {
	return Figure{brimful + mass/950, within, plasticUp}
}
