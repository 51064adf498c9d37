"""The tube network: a small U-shaped network from a small colour picture to maps at half its resolution."""
import torch
import torch.nn as nn
import torch.nn.functional as F


def block(i, o, stride=1, dilation=1):
    return nn.Sequential(nn.Conv2d(i, o, 3, stride, dilation, dilation, bias=False), nn.BatchNorm2d(o), nn.ReLU(inplace=True))


class Tubes(nn.Module):
    """Picture n x 3 x h x w (BGR, -1 to 1, sides multiples of 32) to logits n x 4 x h/2 x w/2: other, wall, part; outline."""

    def __init__(self, c=(16, 24, 40, 64, 80)):
        super().__init__()
        self.d1 = block(3, c[0], 2)
        self.d2 = nn.Sequential(block(c[0], c[1], 2), block(c[1], c[1]))
        self.d3 = nn.Sequential(block(c[1], c[2], 2), block(c[2], c[2]))
        self.d4 = nn.Sequential(block(c[2], c[3], 2), block(c[3], c[3]))
        self.d5 = nn.Sequential(block(c[3], c[4], 2), block(c[4], c[4], 1, 2), block(c[4], c[4], 1, 2))
        self.whole = nn.Linear(c[4], c[4])
        self.u4 = block(c[4] + c[3], c[3])
        self.u3 = block(c[3] + c[2], c[2])
        self.u2 = block(c[2] + c[1], c[1])
        self.u1 = block(c[1] + c[0], c[0] + 4)
        self.out = nn.Conv2d(c[0] + 4, 4, 1)

    def forward(self, x):
        up = lambda t: F.interpolate(t, scale_factor=2.0, mode="bilinear", align_corners=False)
        a = self.d1(x)
        b = self.d2(a)
        c = self.d3(b)
        d = self.d4(c)
        e = self.d5(d)
        e = e + self.whole(e.mean((2, 3)))[:, :, None, None]
        d = self.u4(torch.cat([up(e), d], 1))
        c = self.u3(torch.cat([up(d), c], 1))
        b = self.u2(torch.cat([up(c), b], 1))
        return self.out(self.u1(torch.cat([up(b), a], 1)))


class Maps(nn.Module):
    """What is exported: probabilities instead of logits."""

    def __init__(self, net):
        super().__init__()
        self.net = net

    def forward(self, picture):
        out = self.net(picture)
        return torch.cat([F.softmax(out[:, :3], 1), torch.sigmoid(out[:, 3:])], 1)
