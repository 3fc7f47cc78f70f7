package publish

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Phones show the site's mark on their home screen, and some take only PNG.
// The mark is made of upright and level lines, so that the build can draw it
// from icon.svg itself: one drawing, no second file to keep in step.

// iconSizes are the widths asked for: 180 by iOS, 192 and 512 by manifests.
var iconSizes = []int{180, 192, 512}

func iconName(size int) string { return fmt.Sprintf("icon-%d.png", size) }

// mark is the part of icon.svg that is drawn.
type mark struct {
	ViewBox string `xml:"viewBox,attr"`
	Paths   []struct {
		Fill string `xml:"fill,attr"`
		D    string `xml:"d,attr"`
	} `xml:"path"`
}

// drawIcon draws icon.svg into a square PNG.
func drawIcon(svg []byte, size int) ([]byte, error) {
	var m mark
	if err := xml.Unmarshal(svg, &m); err != nil {
		return nil, err
	}
	var x, y, width, height float64
	if n, _ := fmt.Sscan(m.ViewBox, &x, &y, &width, &height); n != 4 || x != 0 || y != 0 || width != height || !(width > 0) {
		return nil, fmt.Errorf("the viewBox is %q; it must be square and start at 0 0", m.ViewBox)
	}
	img := image.NewRGBA(image.Rect(0, 0, size, size))
	for _, p := range m.Paths {
		fill, err := hexColor(p.Fill)
		if err != nil {
			return nil, err
		}
		rectangles, err := rectangles(p.D)
		if err != nil {
			return nil, err
		}
		for _, r := range rectangles {
			paintRectangle(img, r.scaled(float64(size)/width), fill)
		}
	}
	var b bytes.Buffer
	err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, img)
	return b.Bytes(), err
}

func hexColor(s string) (color.RGBA, error) {
	n, err := strconv.ParseUint(strings.TrimPrefix(s, "#"), 16, 24)
	if err != nil || len(s) != 7 {
		return color.RGBA{}, fmt.Errorf("the fill is %q; write it as #0a4a47", s)
	}
	return color.RGBA{uint8(n >> 16), uint8(n >> 8), uint8(n), 255}, nil
}

// rectangle is a part of the mark, in units of the view box.
type rectangle struct{ left, top, right, bottom float64 }

func (r rectangle) scaled(f float64) rectangle {
	return rectangle{r.left * f, r.top * f, r.right * f, r.bottom * f}
}

var (
	pathToken       = regexp.MustCompile(`[A-Za-z]|-?[0-9.]+`)
	errNotRectangle = errors.New("a path may hold upright rectangles only (M m H h V v z), so that it can be drawn as PNG")
)

// rectangles reads path data made of rectangles.
func rectangles(d string) ([]rectangle, error) {
	var found []rectangle
	var x, y, startX, startY float64
	var corners int
	var box rectangle
	tokens := pathToken.FindAllString(d, -1)
	number := func() (float64, error) {
		if len(tokens) == 0 {
			return 0, errNotRectangle
		}
		n, err := strconv.ParseFloat(tokens[0], 64)
		tokens = tokens[1:]
		if err != nil {
			return 0, errNotRectangle
		}
		return n, nil
	}
	for len(tokens) > 0 {
		command := tokens[0]
		tokens = tokens[1:]
		switch command {
		case "M", "m":
			dx, err1 := number()
			dy, err2 := number()
			if err1 != nil || err2 != nil {
				return nil, errNotRectangle
			}
			if command == "m" {
				dx, dy = x+dx, y+dy
			}
			x, y, startX, startY, corners = dx, dy, dx, dy, 1
			box = rectangle{x, y, x, y}
		case "H", "h", "V", "v":
			n, err := number()
			if err != nil || corners == 0 {
				return nil, errNotRectangle
			}
			switch command {
			case "H":
				x = n
			case "h":
				x += n
			case "V":
				y = n
			case "v":
				y += n
			}
			corners++
			box = rectangle{min(box.left, x), min(box.top, y), max(box.right, x), max(box.bottom, y)}
		case "Z", "z":
			if corners != 4 {
				return nil, errNotRectangle
			}
			found = append(found, box)
			x, y, corners = startX, startY, 0
		default:
			return nil, errNotRectangle
		}
	}
	if corners != 0 || len(found) == 0 {
		return nil, errNotRectangle
	}
	return found, nil
}

// paintRectangle covers each pixel by the share of it that lies inside, which
// keeps edges between two pixels soft.
func paintRectangle(img *image.RGBA, r rectangle, c color.RGBA) {
	for py := int(r.top); py < img.Rect.Max.Y && float64(py) < r.bottom; py++ {
		high := min(r.bottom, float64(py+1)) - max(r.top, float64(py))
		for px := int(r.left); px < img.Rect.Max.X && float64(px) < r.right; px++ {
			share := high * (min(r.right, float64(px+1)) - max(r.left, float64(px)))
			under := img.RGBAAt(px, py)
			mix := func(a, b uint8) uint8 {
				return uint8(math.Round(float64(a)*(1-share) + float64(b)*share))
			}
			img.SetRGBA(px, py, color.RGBA{mix(under.R, c.R), mix(under.G, c.G), mix(under.B, c.B), mix(under.A, c.A)})
		}
	}
}
