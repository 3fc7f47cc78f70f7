package publish

import (
	"bytes"
	"image/color"
	"image/png"
	"os"
	"strings"
	"testing"
)

func TestDrawIcon(t *testing.T) {
	const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4"><path fill="#0a4a47" d="M0 0h4v4H0z"/><path fill="#ffffff" d="M1 1h1v2H1zm1.5 0h1v1h-1z"/></svg>`
	b, err := drawIcon([]byte(svg), 8)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	ground, white := color.RGBA{0x0a, 0x4a, 0x47, 255}, color.RGBA{255, 255, 255, 255}
	for _, c := range []struct {
		x, y int
		want color.RGBA
	}{
		{0, 0, ground}, {2, 2, white}, {3, 5, white}, {3, 6, ground}, {4, 2, ground}, {5, 3, white}, {6, 3, white}, {7, 3, ground}, {5, 4, ground},
	} {
		if got := img.At(c.x, c.y); color.RGBAModel.Convert(got) != c.want {
			t.Errorf("pixel %d,%d: got %v, want %v", c.x, c.y, got, c.want)
		}
	}
	// Half a pixel is half the colour: the step at 2.5 lands on 3.75 of 6.
	b, err = drawIcon([]byte(strings.Replace(svg, "#0a4a47", "#000000", 1)), 6)
	if err != nil {
		t.Fatal(err)
	}
	img, err = png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if got := color.RGBAModel.Convert(img.At(3, 2)).(color.RGBA).R; got != 64 {
		t.Errorf("got red %d in a quarter covered pixel, want 64", got)
	}
}

func TestIconThatCannotBeDrawn(t *testing.T) {
	for _, svg := range []string{
		`not xml`,
		`<svg viewBox="0 0 4 5"><path fill="#000000" d="M0 0h4v4H0z"/></svg>`,
		`<svg viewBox="0 0 4 4"><path fill="black" d="M0 0h4v4H0z"/></svg>`,
		`<svg viewBox="0 0 4 4"><path fill="#000000" d="M0 0c1 1 2 2 3 3z"/></svg>`,
		`<svg viewBox="0 0 4 4"><path fill="#000000" d="M0 0h4v4z"/></svg>`,
		`<svg viewBox="0 0 4 4"><path fill="#000000" d="M0 0h4v4H"/></svg>`,
	} {
		if b, err := drawIcon([]byte(svg), 8); err == nil {
			t.Errorf("%s: got %d bytes, want an error", svg, len(b))
		}
	}
}

// TestTheMark draws the handbook's own icon.
func TestTheMark(t *testing.T) {
	svg, err := os.ReadFile("../../../site/static/icon.svg")
	if err != nil {
		t.Skip("the site has no icon yet")
	}
	for _, size := range iconSizes {
		if _, err := drawIcon(svg, size); err != nil {
			t.Error(err)
		}
	}
}
