"""Writes files.json: WAV files of all kinds, as base64, with the samples that other programs read from them.

Files come from Python's wave and from scipy.io.wavfile where these can write them, and from struct where not. The samples are
those that were written; scipy.io.wavfile reads each file that it can, and must agree. Run: python3 files.py
"""

import base64
import io
import json
import struct
import warnings
import wave
from pathlib import Path

import numpy as np
from scipy.io import wavfile

warnings.simplefilter("ignore", wavfile.WavFileWarning)
random = np.random.default_rng(5)
FRAMES = 37
files = []


def chunk(name, body, size=None):
    return name + struct.pack("<I", len(body) if size is None else size) + body + b"\0" * (len(body) % 2)


def riff(*chunks, name=b"RIFF", size=None):
    body = b"WAVE" + b"".join(chunks)
    return name + struct.pack("<I", len(body) if size is None else size) + body


def fmt(tag, channels, rate, container, bits, align=None):
    align = channels * container if align is None else align
    return struct.pack("<HHIIHH", tag, channels, rate, rate * align, align, bits)


def extensible(subtag, channels, rate, container, valid):
    guid = struct.pack("<H", subtag) + bytes.fromhex("000000001000800000aa00389b71")
    return fmt(0xFFFE, channels, rate, container, 8 * container) + struct.pack("<HHI", 22, valid, 3) + guid


def wholes(bits, channels, frames=FRAMES):
    x = random.integers(-(2 ** (bits - 1)), 2 ** (bits - 1), (frames, channels))
    x[0, 0], x[1, 0] = -(2 ** (bits - 1)), 2 ** (bits - 1) - 1
    return x


def packed(x, container):
    """Whole numbers in bytes, signed unless they are one byte."""
    if container == 1:
        return (x.ravel() + 128).astype(np.uint8).tobytes()
    return b"".join(int(v).to_bytes(container, "little", signed=True) for v in x.ravel())


def add(name, raw, rate, samples, form, told=(), read=True):
    samples = np.asarray(samples, float)
    if read:
        got_rate, got = wavfile.read(io.BytesIO(raw))
        got = got.reshape(len(got), -1).astype(float) if got.dtype != np.uint8 else (got.reshape(len(got), -1) - 128.0)
        # It hands back 24 bits as the upper ones of 32.
        scale = 1 if "floating" in form else {"8-bit PCM": 2**7, "16-bit PCM": 2**15}.get(form, 2**31)
        assert got_rate == rate and np.array_equal(got / scale, samples), name
    files.append(
        {
            "name": name,
            "base64": base64.b64encode(raw).decode(),
            "sampleRate": rate,
            "format": f"WAV, {form}",
            "samples": samples.T.tolist(),
            "told": list(told),
        }
    )


def by_wave(x, width, rate):
    out = io.BytesIO()
    with wave.open(out, "wb") as file:
        file.setnchannels(x.shape[1])
        file.setsampwidth(width)
        file.setframerate(rate)
        file.writeframes(packed(x, width))
    return out.getvalue()


def by_scipy(x, rate):
    out = io.BytesIO()
    wavfile.write(out, rate, x)
    return out.getvalue()


x8, x16, x24, x32 = wholes(8, 1), wholes(16, 2), wholes(24, 2), wholes(32, 1)
f32 = random.normal(size=(FRAMES, 2)).astype(np.float32)
f64 = random.normal(size=(FRAMES, 1))
pcm16 = fmt(1, 2, 44100, 2, 16)
data16 = packed(x16, 2)
full = x16 / 2**15

add("8-bit, odd length, by wave", by_wave(x8, 1, 8000), 8000, x8 / 128, "8-bit PCM")
add("16-bit stereo, by wave", by_wave(x16, 2, 44100), 44100, full, "16-bit PCM")
add("24-bit stereo, by wave", by_wave(x24, 3, 96000), 96000, x24 / 2**23, "24-bit PCM")
add("32-bit, by scipy", by_scipy(x32.astype(np.int32), 48000), 48000, x32 / 2**31, "32-bit PCM")
add("32-bit floating point, by scipy", by_scipy(f32, 48000), 48000, f32, "32-bit floating point")
add("64-bit floating point, by scipy", by_scipy(f64, 48000), 48000, f64, "64-bit floating point")
add(
    "extensible, 24 bits",
    riff(chunk(b"fmt ", extensible(1, 2, 48000, 3, 24)), chunk(b"data", packed(x24, 3))),
    48000,
    x24 / 2**23,
    "24-bit PCM",
)
add(
    "extensible, 24 bits in 32",
    riff(chunk(b"fmt ", extensible(1, 2, 48000, 4, 24)), chunk(b"data", packed(x24 * 256, 4))),
    48000,
    x24 / 2**23,
    "32-bit PCM",
)
add(
    "extensible, floating point",
    riff(chunk(b"fmt ", extensible(3, 2, 48000, 4, 32)), chunk(b"fact", struct.pack("<I", FRAMES)), chunk(b"data", f32.tobytes())),
    48000,
    f32,
    "32-bit floating point",
)
title = chunk(b"LIST", b"INFOINAM" + struct.pack("<I", 7) + b"Thunder\0")
add(
    "lists and odd chunks, before and after",
    riff(title, chunk(b"odd ", b"abc"), chunk(b"fmt ", pcm16), chunk(b"more", b"x"), chunk(b"data", data16), chunk(b"tail", b"y")),
    44100,
    full,
    "16-bit PCM",
)
add(
    "a chunk of 10 kB before the sound",
    riff(chunk(b"fmt ", pcm16), chunk(b"id3 ", bytes(10_001)), chunk(b"data", data16)),
    44100,
    full,
    "16-bit PCM",
)
streamed = 0xFFFFFFFF
add(
    "streamed, sizes never written",
    riff(chunk(b"fmt ", pcm16), chunk(b"data", data16, streamed), size=streamed),
    44100,
    full,
    "16-bit PCM",
    read=False,
)
add("sizes of zero", riff(chunk(b"fmt ", pcm16), chunk(b"data", data16, 0), size=0), 44100, full, "16-bit PCM", read=False)
whole = riff(chunk(b"fmt ", pcm16), chunk(b"data", data16))
add("truncated in a frame", whole[: 44 + 4 * 20 + 1], 44100, full[:20], "16-bit PCM", ["recording.frames"], read=False)
ds64 = lambda bytes, frames: chunk(b"ds64", struct.pack("<QQQI", 4 + 36 + 24 + 8 + bytes, bytes, frames, 0))
add(
    "RF64",
    riff(ds64(len(data16), FRAMES), chunk(b"fmt ", pcm16), chunk(b"data", data16, streamed), name=b"RF64", size=streamed),
    44100,
    full,
    "16-bit PCM",
)
add(
    "RF64 streamed, sizes never written",
    riff(ds64(0, 0), chunk(b"fmt ", pcm16), chunk(b"data", data16, streamed), name=b"RF64", size=streamed),
    44100,
    full,
    "16-bit PCM",
    read=False,
)
add("no size of a frame", riff(chunk(b"fmt ", fmt(1, 2, 44100, 2, 16, 0)), chunk(b"data", data16)), 44100, full, "16-bit PCM", read=False)
add("sound before its format", riff(chunk(b"data", data16), chunk(b"fmt ", pcm16)), 44100, full, "16-bit PCM", read=False)
x12 = wholes(12, 1)
add(
    "12 bits in 16",
    riff(chunk(b"fmt ", fmt(1, 1, 8000, 2, 12)), chunk(b"data", packed(x12 * 16, 2))),
    8000,
    x12 / 2**11,
    "16-bit PCM",
)
many = wholes(16, 256, 3)
add("256 channels", by_wave(many, 2, 48000), 48000, many / 2**15, "16-bit PCM")
add("1 Hz", by_wave(x16, 2, 1), 1, full, "16-bit PCM", ["recording.sampleRate"])
add("1 MHz", by_wave(x16, 2, 1_000_000), 1_000_000, full, "16-bit PCM", ["recording.sampleRate"])

# Two channels at once and alone: what the mean of both, and a sum with weights, must be.
left, right = full.T
mixed = {"mean": full.mean(axis=1).tolist(), "weighted": (0.75 * left - 0.5 * right).tolist()}
written = {
    # It leaves out the byte that must follow an odd number of bytes.
    "pcm8": list(by_wave(x8[:-1], 1, 8000)),
    "pcm16": list(by_wave(x16, 2, 44100)),
    "pcm24": list(by_wave(x24, 3, 96000)),
    "pcm32": list(by_wave(x32, 4, 48000)),
}
lines = ",\n  ".join(json.dumps(file) for file in files)
text = f'{{\n "files": [\n  {lines}\n ],\n "mixed": {json.dumps(mixed)},\n "written": {json.dumps(written)}\n}}\n'
Path(__file__).with_name("files.json").write_text(text)
print(len(files), "files,", len(text), "characters")
