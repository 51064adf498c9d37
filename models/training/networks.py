"""The two networks. Both take grey as (grey / 255 - 0.5) / 0.5 and standardise it locally inside the graph."""
import torch
import torch.nn as nn
import torch.nn.functional as F

from alphabet import CLASSES


def local_contrast(x, cells):
    """Channel 2: x minus the mean of its neighbourhood over its spread there; cells of 4 px, so it costs little."""
    m = F.avg_pool2d(x, 4)
    q = F.avg_pool2d(x * x, 4)
    pool = lambda t: F.avg_pool2d(t, cells, 1, cells // 2, count_include_pad=False)
    m, q = pool(m), pool(q)
    s = torch.rsqrt((q - m * m).clamp_min(0) + 0.0016)
    up = lambda t: F.interpolate(t, scale_factor=4.0, mode="bilinear", align_corners=False)
    return torch.cat([x, ((x - up(m)) * up(s)).clamp(-4, 4)], 1)


class Conv(nn.Sequential):
    def __init__(self, i, o, k=3, s=1, act=True):
        k = (k, k) if isinstance(k, int) else k
        layers = [nn.Conv2d(i, o, k, s, (k[0] // 2, k[1] // 2), bias=False), nn.BatchNorm2d(o)]
        super().__init__(*(layers + [nn.ReLU(inplace=True)] if act else layers))


class Res(nn.Module):
    def __init__(self, c, k=3):
        super().__init__()
        self.a, self.b = Conv(c, c, k), Conv(c, c, k, act=False)

    def forward(self, x):
        return F.relu(x + self.b(self.a(x)))


class Mix(nn.Module):
    """Along the line only: a wide kernel a channel, then a two-layer mix of channels."""

    def __init__(self, c, k=9, grow=2):
        super().__init__()
        self.dw = nn.Conv1d(c, c, k, padding=k // 2, groups=c, bias=False)
        self.n = nn.BatchNorm1d(c)
        self.a, self.b = nn.Conv1d(c, grow * c, 1), nn.Conv1d(grow * c, c, 1)

    def forward(self, x):
        return x + self.b(F.relu(self.a(self.n(self.dw(x)))))


class Reader(nn.Module):
    """[N, 1, 64, W] -> per frame of 4 px class scores and letter edges, per line orientation, style and lettering."""

    def __init__(self, classes=len(CLASSES), c=(32, 64, 112, 176), dim=288, hidden=240):
        super().__init__()
        self.trunk = nn.Sequential(
            Conv(2, c[0], 5, 2), Conv(c[0], c[1], 3, 2), Res(c[1]),
            Conv(c[1], c[2], 3, (2, 1)), Res(c[2]),
            Conv(c[2], c[3], 3, (2, 1)), Res(c[3]))
        self.squeeze = nn.Sequential(nn.Conv2d(c[3], dim, (4, 3), padding=(0, 1), bias=False), nn.BatchNorm2d(dim),
                                     nn.ReLU(inplace=True))
        self.mix = nn.Sequential(Mix(dim), Mix(dim))
        self.lstm = nn.LSTM(dim, hidden, 2, bidirectional=True, dropout=0.05)
        self.head = nn.Linear(2 * hidden, classes)
        self.edges = nn.Linear(2 * hidden, 2)
        self.pooled = nn.Sequential(nn.Linear(2 * dim, 128), nn.ReLU(inplace=True))
        self.orientation, self.style, self.lettering = nn.Linear(128, 4), nn.Linear(128, 6), nn.Linear(128, 1)

    def forward(self, x):
        f = self.squeeze(self.trunk(local_contrast(x, 9)))[:, :, 0]
        f = self.mix(f)
        p = self.pooled(torch.cat([f.mean(2), f.amax(2)], 1))
        y, _ = self.lstm(f.permute(2, 0, 1))
        y = y.transpose(0, 1)
        edges = self.edges(y) * 16.0
        return self.head(y).float().log_softmax(2), self.orientation(p), self.style(p), self.lettering(p), edges


MAPS = ["core", "ink", "dir_cos", "dir_sin", "top", "bottom", "start", "end"]


class Detector(nn.Module):
    """[N, 1, H, W], multiples of 32 -> [N, 8, H/4, W/4], see MAPS."""

    def __init__(self, c=(20, 32, 48, 72, 96, 128)):
        super().__init__()
        self.stem = nn.Sequential(Conv(2, c[0], 5, 2), Conv(c[0], c[1], 3, 2), Res(c[1]), Res(c[1]))
        self.d8 = nn.Sequential(Conv(c[1], c[2], 3, 2), Res(c[2]), Res(c[2]))
        self.d16 = nn.Sequential(Conv(c[2], c[3], 3, 2), Res(c[3]), Res(c[3]))
        self.d32 = nn.Sequential(Conv(c[3], c[4], 3, 2), Res(c[4]), Res(c[4]))
        self.d64 = nn.Sequential(Conv(c[4], c[5], 3, 2), Res(c[5]))
        w = 48
        self.l4, self.l8, self.l16, self.l32, self.l64 = (nn.Conv2d(i, w, 1) for i in c[1:])
        self.u32, self.u16, self.u8, self.u4 = Conv(w, w), Conv(w, w), Conv(w, w), Conv(w, w)
        self.out = nn.Sequential(Conv(w, 40), nn.Conv2d(40, len(MAPS), 1))

    def forward(self, x):
        a = self.stem(local_contrast(x, 17))
        b = self.d8(a)
        c = self.d16(b)
        d = self.d32(c)
        e = self.d64(d)
        up = lambda t, like: F.interpolate(t, size=like.shape[2:], mode="nearest")
        y = self.u32(up(self.l64(e), d) + self.l32(d))
        y = self.u16(up(y, c) + self.l16(c))
        y = self.u8(up(y, b) + self.l8(b))
        y = self.u4(up(y, a) + self.l4(a))
        m = self.out(y).float()
        core, ink = torch.sigmoid(m[:, 0:1]), torch.sigmoid(m[:, 1:2])
        direction = m[:, 2:4] * torch.rsqrt((m[:, 2:4] ** 2).sum(1, keepdim=True) + 1e-6)
        spread = torch.exp(m[:, 4:6].clamp(-3, 3)) * 16.0               # px from here to ink top and bottom
        reach = torch.exp(m[:, 6:8].clamp(-3, 4)) * 32.0                 # px from here to the line's start and end
        return torch.cat([core, ink, direction, spread, reach], 1), m


if __name__ == "__main__":
    for n, x in ((Reader(), torch.zeros(1, 1, 64, 512)), (Detector(), torch.zeros(1, 1, 704, 1024))):
        n.eval()
        import time
        with torch.no_grad():
            n(x)
            t = time.time()
            for _ in range(5):
                n(x)
            print(type(n).__name__, sum(p.numel() for p in n.parameters()) / 1e6, "M", (time.time() - t) / 5 * 1e3, "ms")
