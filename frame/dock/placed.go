package dock

import (
	"fmt"
	"regexp"
	"strconv"

	"example.org/floewright/lumber/measure"
)

// A placedError is an error of the frame that speaks of places as the builder's tape
// has them.
type placedError struct {
	text string
	err  error
}

func (e *placedError) Error() string { return e.text }

func (e *placedError) Unwrap() error { return e.err }

var (
	nodeAt   = regexp.MustCompile(` at \(-?\d+\.\d+, -?\d+\.\d+\) m`) // beside the node's name, which says it
	lineThru = regexp.MustCompile(`through \((-?\d+\.\d+), (-?\d+\.\d+)\) m`)
)

// placed restates the places in an error of package frame, which counts from the dock's
// middle in metres, from where the tape hooks.
func (d *Dock) placed(err error) error {
	if err == nil {
		return nil
	}
	text := lineThru.ReplaceAllStringFunc(nodeAt.ReplaceAllString(err.Error(), ""), func(s string) string {
		m := lineThru.FindStringSubmatch(s)
		x, err1 := strconv.ParseFloat(m[1], 64)
		y, err2 := strconv.ParseFloat(m[2], 64)
		if err1 != nil || err2 != nil {
			return s
		}
		return fmt.Sprintf("through %s along, %s across", measure.Length.Format(x+d.length/2, d.system()), measure.Length.Format(y+d.width/2, d.system()))
	})
	if text == err.Error() {
		return err
	}
	return &placedError{text, err}
}
