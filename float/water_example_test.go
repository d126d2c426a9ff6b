package float_test

import (
	"fmt"
	"log"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// How dense is the water at ice-out, in July, and in a bay?
func ExampleWater_Density() {
	for _, w := range []float.Water{{Celsius: 2}, {Celsius: 25}, {Celsius: 15, Salinity: 20}} {
		rho, err := w.Density()
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%2.0f °C, salinity %2.0f: %.1f kg/m³\n", w.Celsius, w.Salinity, rho)
	}
	// Output:
	//  2 °C, salinity  0: 999.9 kg/m³
	// 25 °C, salinity  0: 997.0 kg/m³
	// 15 °C, salinity 20: 1014.4 kg/m³
}

// A drum as the tape and the scale find it (invented figures).
func ExampleMeasureDrum() {
	d, err := float.MeasureDrum(
		float.Figure{Value: 71 * measure.Inch, Within: measure.Inch / 8},
		float.Figure{Value: 34 * measure.Inch, Within: measure.Inch / 4},
		float.Figure{Value: 41 * measure.Pound, Within: measure.Pound},
	)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f in across, displaces %.0f ± %.0f L\n",
		d.Diameter.Value/measure.Inch, d.Displacement.Value/measure.Litre, d.Displacement.Within/measure.Litre)
	// Output: 22.6 in across, displaces 224 ± 5 L
}

// A preset, with how sure its mass is.
func ExampleLookupDrum() {
	d, err := float.LookupDrum("55 gal steel, tight head")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f ± %.0f lb, %v\n", d.Mass.Value/measure.Pound, d.Mass.Within/measure.Pound, d.Mass.Source)
	// Output: 40 ± 3 lb, trade data table of steel drums, inside 22.5 in by 33.5 in (tight head), 32.8 in (open head); tare
}

// Drums closed in a garage at 20 °C lie on the ice at -30 °C: how hard does the
// air press on them?
func ExampleSeal_Squeeze() {
	s := float.Seal{Celsius: 20}
	p, err := s.Squeeze(-30, 0, 1000)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f kPa, %.1f psi inward\n", p/measure.Kilopascal, p/measure.PSI)
	// Output: 19 kPa, 2.8 psi inward
}
