package frame

// A jump is what happens at one place inside a span: a point load, a couple, or
// an imposed kink (turn) or step (deflection), by which influence lines are made.
type jump struct{ force, couple, kink, step float64 }

// A stretch is the part of a span between two events, with what happens at its
// beginning and the line load along it.
type stretch struct {
	x, h, q, rise float64
	jump
}

// begin applies what happens at the beginning of a stretch.
func (st *stretch) begin(d Diagram) Diagram {
	d.X = st.x
	d.Shear -= st.force
	d.Moment -= st.couple
	d.Slope += st.kink
	d.Deflection += st.step
	return d
}

// march carries a state to the end of a stretch.
func (st *stretch) march(d Diagram, ei, ga float64) Diagram {
	t := st.h
	q, r := st.q, st.rise
	v, m := d.Shear, d.Moment
	bent := (m + (v/2-(q/6+float64(r*t/24))*t)*t) * t / ei
	sunk := (m/2 + (v/6-(q/24+float64(r*t/120))*t)*t) * t * t / ei
	if ga > 0 {
		sunk -= (v - (q/2+float64(r*t/6))*t) * t / ga
	}
	return Diagram{
		X:          st.x + t,
		Shear:      v - (q+float64(r*t/2))*t,
		Moment:     m + (v-(q/2+float64(r*t/6))*t)*t,
		Slope:      d.Slope + bent,
		Deflection: d.Deflection + float64(d.Slope*t) + sunk,
	}
}
