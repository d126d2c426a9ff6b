package sheet

// A Sign is a line to be read from afar, in type of 30 point.
type Sign string

const (
	signSize = 30 * 25.4 / 72
	signLine = signSize * 1.2
)

func (b Sign) height() float64                          { return signLine*folded(signSize, pageWide, true, string(b)) + 4 }
func (b Sign) split(left, _ float64) (head, rest Block) { return whole(b, left) }
func (b Sign) write(h *html, _ string)                  { h.element("p", ` class="sign"`, string(b)) }
