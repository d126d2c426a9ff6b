package lumber_test

import (
	"fmt"
	"log"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A joist table for one's own species and spacings: wet, incised, 10 psf dead and
// 40 psf live load, to the nearest inch as the published tables print.
func ExampleMember_Span() {
	for _, size := range []string{"2x6", "2x8", "2x10"} {
		s, err := lumber.Size(size)
		if err != nil {
			log.Fatal(err)
		}
		grade, err := lumber.Lookup("hem fir", "#2", s)
		if err != nil {
			log.Fatal(err)
		}
		joist := lumber.Member{Section: s, Grade: grade, Repetitive: true}
		for _, spacing := range []float64{12, 16, 24} {
			span, _, err := joist.Span(spacing*measure.Inch, 10*measure.PSF, 40*measure.PSF)
			if err != nil {
				log.Fatal(err)
			}
			fmt.Printf("%s at %.0f in.: %s\n", size, spacing, measure.FeetInches(span, 1))
		}
	}
	// Output:
	// 2x6 at 12 in.: 9 ft 6 in
	// 2x6 at 16 in.: 8 ft 8 in
	// 2x6 at 24 in.: 7 ft 2 in
	// 2x8 at 12 in.: 12 ft 6 in
	// 2x8 at 16 in.: 11 ft 1 in
	// 2x8 at 24 in.: 9 ft 1 in
	// 2x10 at 12 in.: 15 ft 8 in
	// 2x10 at 16 in.: 13 ft 7 in
	// 2x10 at 24 in.: 11 ft 1 in
}

// A single check with the list of its factors.
func ExampleMember_Check() {
	s, err := lumber.Size("2x8")
	if err != nil {
		log.Fatal(err)
	}
	grade, err := lumber.Lookup("spf", "No.2", s)
	if err != nil {
		log.Fatal(err)
	}
	rim := lumber.Member{Section: s, Grade: grade, Length: 8 * measure.Foot, Unbraced: 16 * measure.Inch, Plies: 2}
	checks, err := rim.Check(lumber.Demand{
		Moment: 1000 * measure.PoundForce * measure.Foot,
		Shear:  500 * measure.PoundForce,
	}, lumber.TenYears)
	if err != nil {
		log.Fatal(err)
	}
	for _, c := range checks {
		fmt.Printf("%s: %s: %s\n", c.Name, c.Numbers(measure.US), c.Words())
		for _, f := range c.Factors {
			fmt.Printf("  %s %.2f %s: %s\n", f.Symbol, f.Value, f.Name, f.Why)
		}
	}
	// Output:
	// bending: 457 psi, at most 838 psi: holds
	//   CD 1.00 load duration: ten years
	//   CM 1.00 wet service: wet, but Fb CF is 1050 psi, at most 1150
	//   Ct 1.00 temperature: at most 100 °F (38 °C)
	//   CL 1.00 beam stability: RB 5.15
	//   CF 1.20 size: 8 in. wide, No.2
	//   Cfu 1.00 flat use: loaded on the narrow face
	//   Ci 0.80 incising: incised
	//   Cr 1.00 repetitive member: two plies are too few
	// shear: 34.5 psi, at most 105 psi: holds
	//   CD 1.00 load duration: ten years
	//   CM 0.97 wet service: wet
	//   Ct 1.00 temperature: at most 100 °F (38 °C)
	//   Ci 0.80 incising: incised
}

// Values as printed, with their source.
func ExampleLookup() {
	s, err := lumber.Size("2x10")
	if err != nil {
		log.Fatal(err)
	}
	g, err := lumber.Lookup("southern yellow pine", "no 2", s)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s %s: Fb %.0f psi, E %.0f psi\n", g.Species, g.Name, g.Fb.Printed, g.E.Printed)
	fmt.Println(g.Fb.Source)

	_, err = lumber.Lookup("cedar", "no 2", s)
	fmt.Println(err)
	// Output:
	// Southern Pine No.2: Fb 800 psi, E 1400000 psi
	// NDS Supplement: Design Values for Wood Construction (American Wood Council), 2018, Table 4B, Southern Pine, No.2, to 10 in. wide (as quoted)
	// species: "cedar" unknown name; want Douglas Fir-Larch; Douglas Fir-Larch (North); Hem-Fir; Hem-Fir (North); Spruce-Pine-Fir; Spruce-Pine-Fir (South); Southern Pine; Redwood; Redwood, open grain; Western Cedars; Northern White Cedar; Eastern White Pine; Eastern Softwoods; Northern Species
}

// A stamp of which the species cannot be read: the weakest the yard sells.
func ExampleReadStamp() {
	stamp, err := lumber.ReadStamp("No.2 S-GRN, mill 104")
	if err != nil {
		log.Fatal(err)
	}
	s, err := lumber.Size("2x8")
	if err != nil {
		log.Fatal(err)
	}
	g, err := stamp.Lookup(s, "hem-fir", "spf")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s, %s: Fb %.0f psi, Fv %.0f psi\n", g.Species, g.Name, g.Fb.Printed, g.Fv.Printed)
	// Output:
	// weakest of Hem-Fir, Spruce-Pine-Fir, No.2: Fb 850 psi, Fv 135 psi
}

// The bounds of a joist's weight.
func ExampleMember_Weights() {
	s, err := lumber.Size("2x8")
	if err != nil {
		log.Fatal(err)
	}
	g, err := lumber.Lookup("syp", "2", s)
	if err != nil {
		log.Fatal(err)
	}
	w, err := lumber.Member{Section: s, Grade: g, Length: 12 * measure.Foot}.Weights()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("as bought", measure.Mass.Format(w.Bought, measure.US))
	fmt.Println("damp in service", measure.Mass.Format(w.Damp, measure.US))
	fmt.Println("soaked bound", measure.Mass.Format(w.Soaked, measure.US))
	// Output:
	// as bought 33.8 lb
	// damp in service 43.3 lb
	// soaked bound 66.0 lb
}

// Deck boards laid wet and tight, and what they leave when dry.
func ExampleGap() {
	gap, err := lumber.Gap(5.5*measure.Inch, 0.60, 0, 0.15)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(measure.FeetInches(gap, 32))
	// Output:
	// 5/32 in
}

// A 5/4 board over joists too far apart for it, and one that runs slanted.
func ExampleBoard_Check() {
	s, err := lumber.Size("5/4x6")
	if err != nil {
		log.Fatal(err)
	}
	for _, b := range []lumber.Board{{Section: s}, {Section: s, Slanted: true}} {
		c, err := b.Check(16 * measure.Inch)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %s\n", c.Numbers(measure.US), c.Words())
	}
	// Output:
	// 1 ft 4 in, at most 1 ft 4 in: holds
	// 1 ft 4 in, at most 1 ft: short
}

// A joist notched a quarter of its depth over its support.
func ExampleMember_CheckNotch() {
	s, err := lumber.Size("2x8")
	if err != nil {
		log.Fatal(err)
	}
	g, err := lumber.Lookup("spf", "2", s)
	if err != nil {
		log.Fatal(err)
	}
	joist := lumber.Member{Section: s, Grade: g, Length: 3, Smooth: true}
	checks, err := joist.CheckNotch(lumber.Notch{Depth: 1.25 * measure.Inch}, 450*measure.PoundForce, lumber.TenYears)
	if err != nil {
		log.Fatal(err)
	}
	for _, c := range checks {
		fmt.Printf("%s: %s: %s\n", c.Name, c.Numbers(measure.US), c.Words())
	}
	// Output:
	// shear at the notch: 450 lbf, at most 538 lbf: holds
	// depth of the notch: 1-1/4 in, at most 1-13/16 in: holds
}

// How far deck joists may run past the beam.
func ExampleMember_Overhang() {
	s, err := lumber.Size("2x8")
	if err != nil {
		log.Fatal(err)
	}
	g, err := lumber.Lookup("syp", "2", s)
	if err != nil {
		log.Fatal(err)
	}
	joist := lumber.Member{Section: s, Grade: g, Smooth: true, Repetitive: true}
	a, c, err := joist.Overhang(9*measure.Foot, 220*measure.PoundForce, 0)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s (%s)\n", measure.FeetInches(a, 1), c.Name)
	// Output:
	// 2 ft 3 in (overhang, a quarter of the span governs)
}

// What the cut ends and bolt holes of a frame need.
func ExampleFieldTreatment() {
	s, err := lumber.Size("2x8")
	if err != nil {
		log.Fatal(err)
	}
	hole, err := lumber.HoleArea(measure.Inch/2, s.Width)
	if err != nil {
		log.Fatal(err)
	}
	job, err := lumber.FieldTreatment(60*s.Area() + 120*hole)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d coats, %s\n", job.Coats, measure.Volume.Format(job.Volume, measure.SI))
	fmt.Println(job.Rules[2])
	// Output:
	// 2 coats, 0.5 L
	// on shore, over a sheet that catches drips: never on the ice or over the water
}

// Two plies under joists of 8 ft that run 2 ft past them.
func ExampleMember_BeamSpan() {
	s, err := lumber.Size("2x10")
	if err != nil {
		log.Fatal(err)
	}
	g, err := lumber.Lookup("syp", "2", s)
	if err != nil {
		log.Fatal(err)
	}
	beam := lumber.Member{Section: s, Grade: g, Plies: 2, Smooth: true}
	span, c, err := beam.BeamSpan(8*measure.Foot, 2*measure.Foot, 10*measure.PSF, 40*measure.PSF)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s (%s)\n", measure.FeetInches(span, 1), c.Name)
	// Output:
	// 8 ft 7 in (beam span, bending governs)
}
