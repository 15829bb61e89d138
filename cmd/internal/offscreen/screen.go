package offscreen

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"io"
	"net"
	"strings"
)

// Screen is a connection to an X server that reads pixels and presses keys. It speaks just the five requests of the
// X protocol that this takes (X Window System Protocol, X11R7.7, and the XTEST extension, version 2.2), since starting
// a program for every look takes longer than the program under test may take to answer. For one goroutine.
type Screen struct {
	Width, Height int
	conn          net.Conn
	in            *bufio.Reader
	root          uint32
	minKey        byte
	maxKey        byte
	xtest         byte
	keys          map[uint32]keyPress
}

var le = binary.LittleEndian

// Connect opens a connection to the server of a display like ":3" on this machine.
func Connect(display string) (*Screen, error) {
	conn, err := net.Dial("unix", "/tmp/.X11-unix/X"+strings.TrimPrefix(display, ":"))
	if err != nil {
		return nil, err
	}
	s := &Screen{conn: conn, in: bufio.NewReaderSize(conn, 1<<20)}
	if err := s.greet(); err != nil {
		conn.Close()
		return nil, fmt.Errorf("x server %s: %w", display, err)
	}
	return s, nil
}

// Close ends the connection.
func (s *Screen) Close() error { return s.conn.Close() }

func (s *Screen) greet() error {
	hello := make([]byte, 12)
	hello[0] = 'l'
	le.PutUint16(hello[2:], 11)
	if _, err := s.conn.Write(hello); err != nil {
		return err
	}
	head := make([]byte, 8)
	if _, err := io.ReadFull(s.in, head); err != nil {
		return err
	}
	body := make([]byte, 4*int(le.Uint16(head[6:])))
	if _, err := io.ReadFull(s.in, body); err != nil {
		return err
	}
	if head[0] != 1 {
		return fmt.Errorf("refused: %q", bytes.TrimRight(body, "\x00"))
	}
	s.minKey, s.maxKey = body[26], body[27]
	vendor, formats := int(le.Uint16(body[16:])), int(body[21])
	screen := body[32+(vendor+3)/4*4+8*formats:]
	s.root = le.Uint32(screen)
	s.Width, s.Height = int(le.Uint16(screen[20:])), int(le.Uint16(screen[22:]))
	return s.loadKeys()
}

// ask sends a request, whose length field it fills in, and returns the whole reply.
func (s *Screen) ask(request []byte) ([]byte, error) {
	if err := s.tell(request); err != nil {
		return nil, err
	}
	head := make([]byte, 32)
	for {
		if _, err := io.ReadFull(s.in, head); err != nil {
			return nil, err
		}
		if head[0] == 0 {
			return nil, fmt.Errorf("x error %d on request %d", head[1], head[10])
		}
		if head[0] == 1 {
			break // anything else is an event, such as a change of the keyboard
		}
	}
	reply := make([]byte, 32+4*int(le.Uint32(head[4:])))
	copy(reply, head)
	_, err := io.ReadFull(s.in, reply[32:])
	return reply, err
}

// tell sends a request that has no reply.
func (s *Screen) tell(request []byte) error {
	if len(request)%4 != 0 {
		return errors.New("x request of a broken length")
	}
	le.PutUint16(request[2:], uint16(len(request)/4))
	_, err := s.conn.Write(request)
	return err
}

// Grab reads the pixels of an area of the screen. Areas of a few thousand pixels take well under a millisecond.
func (s *Screen) Grab(area image.Rectangle) (*image.RGBA, error) {
	area = area.Intersect(image.Rect(0, 0, s.Width, s.Height))
	reply, err := s.getImage(area)
	if err != nil {
		return nil, err
	}
	img := image.NewRGBA(image.Rect(0, 0, area.Dx(), area.Dy()))
	bgrx := reply[32:]
	for i := 0; i+3 < len(img.Pix) && i+3 < len(bgrx); i += 4 {
		img.Pix[i], img.Pix[i+1], img.Pix[i+2], img.Pix[i+3] = bgrx[i+2], bgrx[i+1], bgrx[i], 255
	}
	return img, nil
}

func (s *Screen) getImage(area image.Rectangle) (reply []byte, err error) {
	area = area.Intersect(image.Rect(0, 0, s.Width, s.Height))
	const getImage, zPixmap = 73, 2
	q := make([]byte, 20)
	q[0], q[1] = getImage, zPixmap
	le.PutUint32(q[4:], s.root)
	le.PutUint16(q[8:], uint16(area.Min.X))
	le.PutUint16(q[10:], uint16(area.Min.Y))
	le.PutUint16(q[12:], uint16(area.Dx()))
	le.PutUint16(q[14:], uint16(area.Dy()))
	le.PutUint32(q[16:], ^uint32(0))
	return s.ask(q)
}
