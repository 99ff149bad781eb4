"""What stands between a voice and the microphone: rooms, tools, a telephone's band, too much gain. All at random."""

from __future__ import annotations

from math import tau
from typing import Any

import torch

RATE = 16_000


def disturbed(sound: Any) -> Any:
    """A batch of sound (batch, samples), -1..1, each as another room and another microphone would give it."""
    count, length = sound.shape
    device = sound.device
    frequency = torch.fft.rfftfreq(length, 1 / RATE, device=device)
    spectrum = torch.fft.rfft(sound) * (frequency.clamp_min(60) / 1000) ** (0.25 * torch.randn(count, 1, device=device))
    band = torch.sigmoid((frequency - 250) / 20) * torch.sigmoid((3500 - frequency) / 60)
    spectrum = torch.where(torch.rand(count, 1, device=device) < 0.1, spectrum * band, spectrum)
    sound = torch.fft.irfft(spectrum, n=length)
    third = max(1, count // 3)
    sound = torch.cat([_in_a_room(sound[:third]), sound[third:]])
    level = 1.6 * sound.square().mean(-1, keepdim=True).sqrt().clamp_min(0.004)
    ratio = 3 + 42 * torch.rand(count, 1, device=device)
    order = torch.randperm(count, device=device)
    sound = sound + tools(count, length, device)[order] * level * 10 ** (-ratio / 20)
    loud = torch.rand(count, 1, device=device) < 0.08
    return torch.where(loud, (6 * sound).clamp(-0.9, 0.9), sound).clamp(-1, 1)


def _in_a_room(sound: Any) -> Any:
    """Behind each sample a tail of noise that dies away in 0.05 to 0.4 s (60 dB)."""
    count, length = sound.shape
    device = sound.device
    time = torch.arange(8000, device=device) / RATE
    dying = torch.exp(-6.9 * time / (0.05 + 0.35 * torch.rand(count, 1, device=device)))
    tail = 0.05 * (0.2 + torch.rand(count, 1, device=device)) * dying * torch.randn(count, 8000, device=device)
    tail[:, 0] = 1
    size = length + 8192
    return torch.fft.irfft(torch.fft.rfft(sound, n=size) * torch.fft.rfft(tail, n=size), n=size)[:, :length]


def tools(count: int, length: int, device: Any) -> Any:
    """Noise of root mean square 1 (count, length): hissing, humming like a motor, and knocking."""
    frequency = torch.fft.rfftfreq(length, 1 / RATE, device=device)
    low, high = 30 + 300 * torch.rand(count, 1, device=device), 1500 + 6500 * torch.rand(count, 1, device=device)
    shape = (frequency.clamp_min(20) / 100) ** (-1.2 * torch.rand(count, 1, device=device))
    shape = shape * torch.sigmoid((frequency - low) / 20) * torch.sigmoid((high - frequency) / 200)
    noise = _even(torch.fft.irfft(torch.fft.rfft(torch.randn(count, length, device=device)) * shape, n=length))
    time = torch.arange(length, device=device) / RATE
    third, fifth = max(1, count // 3), max(1, count // 5)
    noise[:third] = 0.6 * noise[:third] + 0.8 * _even(_humming(third, time))
    noise[-fifth:] = 0.3 * noise[-fifth:] + 5 * _knocking(fifth, time)
    beat = 0.3 + 4 * torch.rand(count, 1, device=device)
    return _even(noise * (1 + torch.rand(count, 1, device=device) * torch.sin(tau * beat * time)))


def _humming(count: int, time: Any) -> Any:
    pitch = 50 + 200 * torch.rand(count, 1, device=time.device)
    parts = [
        torch.rand(count, 1, device=time.device)
        * torch.sin(tau * pitch * number * time + tau * torch.rand(count, 1, device=time.device))
        for number in range(1, 13)
    ]
    return torch.stack(parts).sum(0)


def _knocking(count: int, time: Any) -> Any:
    every = 0.3 + 1.2 * torch.rand(count, 1, device=time.device)
    since = (time + torch.rand(count, 1, device=time.device)) % every
    dying = torch.exp(-since * (30 + 80 * torch.rand(count, 1, device=time.device)))
    return dying * torch.sin(tau * (120 + 900 * torch.rand(count, 1, device=time.device)) * since)


def _even(sound: Any) -> Any:
    return sound / (sound.square().mean(-1, keepdim=True).sqrt() + 1e-9)
