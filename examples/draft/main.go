// Draft prints how deep one drum sinks under its share of a dock.
package main

import (
	"fmt"
	"log"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

func main() {
	drum := float.Cylinder{Diameter: 23 * measure.Inch, Length: 35 * measure.Inch}
	share := 255 * measure.Pound // of the dock, with the drum's own weight
	draft, err := drum.Draft(share / 1000)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("draft", measure.Length.Format(draft, measure.US))
}
