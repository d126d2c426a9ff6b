package published

// lumberNums returns several columns of a row as numbers.
func lumberNums(r row, columns ...string) ([]float64, error) {
	out := make([]float64, len(columns))
	for i, c := range columns {
		x, err := r.num(c)
		if err != nil {
			return nil, err
		}
		out[i] = x
	}
	return out, nil
}
